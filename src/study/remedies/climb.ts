/**
 * Takes a remedy, or several hand in hand, from the smallest change to the largest, until the engine runs within what its
 * compressor is made for; or, where it never does, notes with which it strains it least.
 *
 * The quick search for a settled turn proposes, `runEngine` decides: what is said of a changed engine is the answer of the
 * very run that its builder gets when he makes the change.
 */
import type { EngineSpec } from '../../parts/engine-description.ts';
import { compressorVerdict } from '../../run/compressor-verdict.ts';
import type { RunResult } from '../../run/result.ts';
import { runEngine } from '../../run/run-engine.ts';
import { settledRunning } from '../../run/settled-running.ts';
import type { ChangedSetting, TriedChange } from '../../run/trials.ts';
import { changedTo, type ChangeableEngine, type Remedy } from './remedy.ts';

/** Where a remedy ended. */
export interface Climb {
  readonly remedies: readonly Remedy[];
  /** One of each remedy. */
  readonly changes: readonly TriedChange[];
  /** The engine so changed. */
  readonly spec: EngineSpec;
  /**
   * Only of an engine that runs, as far as the quick search can tell: the air it takes as a share of what its compressor
   * can give within its rating; 0 without one.
   */
  readonly strain?: number;
  /** The smaller change before it, with which it does not run. */
  readonly notEnough?: readonly ChangedSetting[];
}

/** Undefined where none of the changes makes an engine that can be. */
export function climb(engine: ChangeableEngine, remedies: readonly Remedy[]): Climb | undefined {
  let best: Climb | undefined;
  for (let rung = 0; rung < Math.max(...remedies.map(({ rungs }) => rungs.length)); rung += 1) {
    const changes = remedies.flatMap((remedy) => changeAt(remedy, rung) ?? []);
    const spec = changedTo(engine, settingsOf(changes));
    if (spec === undefined) continue;
    const strain = strainOf(spec);
    const notEnough = best?.strain === undefined ? best && settingsOf(best.changes) : best.notEnough;
    const own: Climb = {
      remedies,
      changes,
      spec,
      ...(strain === undefined ? {} : { strain, ...(notEnough ? { notEnough } : {}) }),
    };
    if (isWithinRating(own) && settledResult(spec)) return own;
    if (best?.strain === undefined || strainsLess(own, best)) best = own;
  }
  return best;
}

/** A remedy that goes no further stays where it is. */
function changeAt({ what, proviso, rungs }: Remedy, rung: number): TriedChange | undefined {
  const settings = rungs[Math.min(rung, rungs.length - 1)];
  return settings && { what, settings, ...(proviso === undefined ? {} : { proviso }) };
}

export const settingsOf = (changes: readonly TriedChange[]): readonly ChangedSetting[] =>
  changes.flatMap(({ settings }) => settings);

function strainOf(spec: EngineSpec): number | undefined {
  const { settled } = settledRunning(spec);
  if (settled === undefined || spec.compressor === undefined) return settled && 0;
  const { demandAnr, deliveryAnr, dutyRating } = compressorVerdict(
    spec.compressor,
    spec,
    settled.airMassFlow,
  );
  return demandAnr / (deliveryAnr * dutyRating);
}

export const isWithinRating = ({ strain }: Climb): boolean => strain !== undefined && strain <= 1;

/** Less relief than this is none to go further for. */
const NOTICED = 0.9;

export const strainsLess = (one: Climb, other: Climb): boolean =>
  (one.strain ?? Infinity) < NOTICED * (other.strain ?? Infinity);

/** The whole story of an engine that settles; undefined for any other. */
export function settledResult(
  spec: EngineSpec,
): (RunResult & { readonly settled: NonNullable<RunResult['settled']> }) | undefined {
  const result = runEngine(spec);
  return result.settled && { ...result, settled: result.settled };
}
