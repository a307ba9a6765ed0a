/**
 * Tries remedies on an engine that does not run until it does: one after the other, the easiest first. Most trials are no
 * more than a start that fails, a few milliseconds each. Where none helps alone, the two go together that come nearest:
 * after which the engine, turned slowly, brings most torque beyond what the load takes. The torque that is missing where
 * it comes to rest would say less, for an engine that gets further comes to rest elsewhere.
 */
import { buildEngine } from '../../model/engine.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { OutcomeKind } from '../../run/outcome.ts';
import type { RunResult } from '../../run/result.ts';
import { unaidedShare } from '../../run/start-map.ts';
import { slowestTurning } from '../../run/torque-curve.ts';
import type { InVain, SlowTurn, TriedChange, Trials } from '../../run/trials.ts';
import { climb, isWithinRating, settingsOf, strainsLess, settledResult, type Climb } from './climb.ts';
import { remedyRules } from './registry.ts';
import type { ChangeableEngine, Remedy } from './remedy.ts';

/** Outcomes that a change of the engine can turn into running. */
const CURABLE: readonly OutcomeKind[] = ['no-start', 'stalled', 'runs-backwards', 'not-settled'];

/**
 * The result of an engine that does not run, with what changes would do to it: `verdictOf`, `reportHtml` and `summaryJson`
 * then tell it. That of any other as it is. Where the engine could start from elsewhere is read off the result's `drive`.
 */
export function withTrials(result: RunResult, engine: ChangeableEngine): RunResult {
  const { outcome, drive } = result;
  if (!CURABLE.includes(outcome.kind) || result.engine.reverse?.gearServes === false) return result;
  const remedies = remedyRules.flatMap((rule) => rule(engine, result) ?? []);
  const singles = oneByOne(engine, remedies);
  const running = firstRunning(singles);
  return {
    ...result,
    trials: {
      ...(drive ? { unaidedShareNow: drive.startMap.unaidedShare } : {}),
      ...(running ? { running, inVain: changesInVain(singles) } : foundTogether(engine, singles)),
    },
  };
}

/** Up to the first that does without more than the compressor is made for. */
function oneByOne(engine: ChangeableEngine, remedies: readonly Remedy[]): readonly Climb[] {
  const climbs: Climb[] = [];
  for (const remedy of remedies) {
    const own = climb(engine, [remedy]);
    if (own) climbs.push(own);
    if (own && isWithinRating(own)) break;
  }
  return climbs;
}

/** The easiest, unless another strains the compressor clearly less. */
function firstRunning(climbs: readonly Climb[]): Trials['running'] {
  const running = climbs.filter(({ strain }) => strain !== undefined);
  const [easiest, ...others] = running;
  if (easiest === undefined) return undefined;
  const best = others.reduce((least, own) => (strainsLess(own, least) ? own : least), easiest);
  return foundRunning(best) ?? firstRunning(running.filter((own) => own !== best));
}

const changesInVain = (climbs: readonly Climb[]): readonly InVain[] =>
  climbs
    .filter(({ strain }) => strain === undefined)
    .flatMap(({ changes }) => changes.map((change) => ({ change })));

function foundTogether(engine: ChangeableEngine, singles: readonly Climb[]): Trials {
  const slowTurnNow = slowTurnOf(engine.spec);
  const nearest = singles
    .map((own) => ({ own, slowTurn: slowTurnOf(own.spec) }))
    .sort((a, b) => surplus(b.slowTurn) - surplus(a.slowTurn));
  const best = nearest.slice(0, 2).flatMap(({ own }) => own.remedies);
  const together = best.length === 2 ? climb(engine, best) : undefined;
  const running = together && firstRunning([together]);
  return {
    ...(slowTurnNow ? { slowTurnNow } : {}),
    ...(running ? { running } : {}),
    inVain: nearest.flatMap(({ own, slowTurn }) =>
      own.changes.map((change) => ({ change, ...(slowTurn ? { slowTurn } : {}) })),
    ),
  };
}

/** Undefined where the quick search was wrong. */
function foundRunning({ changes, spec, notEnough }: Climb): Trials['running'] {
  const [first, ...others] = changes;
  const result = settledResult(spec);
  if (result === undefined || first === undefined) return undefined;
  const { settled, compressor } = result;
  const { speed, brakePower } = settled;
  return {
    changes: [first, ...others],
    answer: {
      speed,
      brakePower,
      ...(compressor ? { compressor } : {}),
      ...(changesTheEngine(changes) ? { unaidedShare: unaidedShare(buildEngine(spec), speed) } : {}),
    },
    ...(notEnough ? { notEnough } : {}),
  };
}

/** Where the engine starts unaided is a matter of the engine; another start does not change it. */
const changesTheEngine = (changes: readonly TriedChange[]): boolean =>
  settingsOf(changes).some(({ path }) => !/^(?:start|run)\./u.test(path));

function slowTurnOf(spec: EngineSpec): SlowTurn | undefined {
  const engine = buildEngine(spec);
  const point = slowestTurning(engine);
  return point && { torque: point.torque, load: engine.load.torque(point.speed) };
}

const surplus = (turn: SlowTurn | undefined): number =>
  turn === undefined ? -Infinity : turn.torque - turn.load;
