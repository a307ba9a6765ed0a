/**
 * The settled answer, quickly: does the engine get going from its start, and how does it run then? For sweeps, searches
 * and curves; `runEngine` tells the whole story of one engine.
 *
 * The start is followed for real to the first whole turn; from there rough turns lead near the settled state, which is a root,
 * and the tangent of a closer one tells the rest. An engine for
 * which that leads nowhere, because it stalls again or because its turns never come to repeat themselves, is spun on
 * for real.
 */
import { buildEngine, type Engine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { engineSystem } from '../model/system.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { failedTurn } from './failed-turn.ts';
import { measureTurn } from './measured-turn.ts';
import { motionFrom, nextMilestone, type Milestone, type Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import { outcomeOf } from './outcome-words.ts';
import type { Counters, SettledTurn } from './result.ts';
import { settle } from './settle.ts';
import { leadToRoot, turnsBy } from './settled-root.ts';
import { settledTurn } from './settled-cycle.ts';
import {
  CLOSER,
  engineStepper,
  FINE,
  FOLLOWING,
  QUICK,
  ROUGH,
  type Accuracy,
  type Stepper,
} from './stepper.ts';
import { TangentTurns } from './tangent-turns.ts';
import type { Closeness } from './turn-unknowns.ts';

/** How near to the root a turn has to be to tell it; nearer where valves snap open, as tangents know nothing of when. */
const NEAR: Closeness = { speed: 2e-2, gas: 5e-2 };
const NEARER: Closeness = { speed: 2e-3, gas: 1e-2 };

/** Steps for one rough stretch; some tens are usual. */
const ROUGH_STEPS = 2000;

/** What `settledRunning` finds. */
export interface SettledAnswer {
  /** Its time and turns are those that were followed for real, not those until it settles. */
  readonly outcome: Outcome;
  /** Only for an engine that settles. */
  readonly settled?: SettledTurn;
  readonly counters: Counters;
}

/** What a run came to, and what it cost. */
interface Attempt {
  readonly motion: Motion;
  readonly end: Milestone | { readonly kind: 'settled' };
  readonly settled?: SettledTurn;
  readonly counted: readonly Pick<Stepper, 'counters'>[];
  readonly turns: number;
}

type Following = Partial<Pick<Motion, 'stretchSteps'>> & { readonly totals: boolean };

function startOf(
  engine: Engine,
  { start, run }: EngineSpec,
  accuracy: Accuracy,
  { totals, ...steps }: Following,
): Motion {
  const system = engineSystem(engine, { totals });
  return motionFrom({
    ...steps,
    system,
    stepper: engineStepper(system, accuracy),

    y: initialState(system, start.crank_angle, start.hand_speed),
    longestTime: run.longest_time,
  });
}

/** Undefined when there is no root to be found. */
function attemptByRoot(engine: Engine, spec: EngineSpec): Attempt | undefined {
  const motion = startOf(engine, spec, ROUGH, { totals: false, stretchSteps: ROUGH_STEPS });
  const { stepper } = motion;
  const first = nextMilestone(motion);
  // Between wide ports a rough step may end as far off as it began; that says nothing about the engine.
  if (first.kind === 'step-limit' || first.kind === 'non-finite') return undefined;
  if (first.kind !== 'turn') return { motion, end: first, counted: [stepper], turns: 0 };
  const lead = leadToRoot(motion.system, motion.y, turnsBy(stepper));
  if (lead.kind !== 'near') return undefined;
  const system = engineSystem(engine);
  const y = new Float64Array(system.dimension);
  y.set(motion.y);
  // Quick steps make too much, or too little, of valves that snap open where no step can be told to end.
  const snaps = engine.passages.some(({ passage }) => passage.selfActing);
  const ways = (snaps ? [CLOSER] : [QUICK, CLOSER]).map(
    (accuracy) => new TangentTurns(system, engineStepper(system, accuracy), snaps ? NEARER : NEAR),
  );
  for (const way of ways) {
    const turn = way.turnAtRoot(y);
    if (turn === undefined) continue;
    if ('reason' in turn) return undefined;
    return {
      motion,
      end: { kind: 'settled' },
      settled: settledTurn(system, turn),
      counted: [stepper, ...ways],
      turns: 1 + lead.turns + ways.reduce((sum, { turns }) => sum + turns, 0),
    };
  }
  return undefined;
}

function attemptBySpinning(engine: Engine, spec: EngineSpec): Attempt {
  const motion = startOf(engine, spec, FOLLOWING, { totals: true });
  const { system, stepper, y, startAngle } = motion;
  const fine = engineStepper(system, FINE);
  const { end } = settle(motion);
  const turns = Math.max(0, Math.floor((y[0]! - startAngle) / (2 * Math.PI)));
  const attempt = { motion, end, counted: [stepper, fine], turns };
  if (end.kind !== 'settled') return attempt;
  const turn = measureTurn(system, fine, y);
  if ('reason' in turn) return { ...attempt, end: failedTurn(turn) };
  return { ...attempt, settled: settledTurn(system, turn) };
}

/** Runs a description that has passed its checks. Never throws for an engine that does not run. */
export function settledRunning(spec: EngineSpec): SettledAnswer {
  const engine = buildEngine(spec);
  const { motion, end, settled, counted, turns } =
    attemptByRoot(engine, spec) ?? attemptBySpinning(engine, spec);
  const total = (key: 'derivativeCalls' | 'acceptedSteps'): number =>
    counted.reduce((sum, { counters }) => sum + counters[key], 0);
  return {
    outcome: outcomeOf(motion, end, settled?.speed),
    ...(settled ? { settled } : {}),
    counters: { derivativeCalls: total('derivativeCalls'), acceptedSteps: total('acceptedSteps'), turns },
  };
}
