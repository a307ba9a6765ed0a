/**
 * The answer of one engine to everything a study asks; plain data, for it travels between threads. This is the one place
 * that knows how an engine is brought to its settled turn.
 */
import { buildEngine } from '../model/engine.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { compressorVerdict } from '../run/compressor-verdict.ts';
import type { OutcomeKind } from '../run/outcome.ts';
import { settledRunning } from '../run/settled-running.ts';
import { unaidedShare } from '../run/start-map.ts';
import { measured, type Measured } from './measures.ts';

export type AnswerOutcome =
  | OutcomeKind
  /** Each value by itself could be; together they make no engine. */
  | 'impossible'
  /** The program broke off; a fault of ours. */
  | 'broken-off';

/** What became of one engine, and its figures. */
export interface EngineAnswer {
  readonly outcome: AnswerOutcome;
  /** A plain sentence. */
  readonly reason: string;
  readonly values: Measured;
}

/** What an answer must tell besides the settled turn. */
export interface Wanted {
  /** Whether to try from how many crank positions the engine starts unaided. */
  readonly starts: boolean;
  /** Whether to look how small its cams can be. */
  readonly cams: boolean;
}

/** Runs an engine to its settled turn and notes what a study asks. */
export function engineAnswer(spec: EngineSpec, wanted: Wanted): EngineAnswer {
  const { outcome, settled } = settledRunning(spec);
  const { compressor } = spec;
  const known = {
    ...(settled ? { settled } : {}),
    ...(settled && compressor
      ? { compressor: compressorVerdict(compressor, spec, settled.airMassFlow) }
      : {}),
    ...(settled && wanted.starts ? { startShare: unaidedShare(buildEngine(spec), settled.speed) } : {}),
    ...(settled && wanted.cams ? baseCircleOf(spec) : {}),
  };
  return { outcome: outcome.kind, reason: outcome.reason, values: measured(known) };
}

/** Both ends of a cylinder are served by cams of one kind. */
function baseCircleOf(spec: EngineSpec): { readonly baseCircle?: number } {
  const baseCircle = buildEngine(spec).ends[0].valveGear.smallestBaseCircle?.();
  return baseCircle === undefined ? {} : { baseCircle };
}

/** The answer of an engine that cannot be. */
export const impossible = (reason: string): EngineAnswer => ({ outcome: 'impossible', reason, values: {} });

/** The answer of an engine that broke the program off. */
export const brokenOff = (reason: string): EngineAnswer => ({ outcome: 'broken-off', reason, values: {} });

/** Whether an engine runs. */
export const runs = ({ outcome }: EngineAnswer): boolean => outcome === 'settled';
