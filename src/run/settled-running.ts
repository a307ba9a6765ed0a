/**
 * The settled answer, quickly: does the engine get going from its start, and how does it run then? For sweeps, searches
 * and curves; `runEngine` tells the whole story of one engine.
 *
 * The start is followed for real to the first whole turn; from there the settled state is found as a root. An engine for
 * which that leads nowhere, because it stalls again or because its turns never come to repeat themselves, is spun on
 * for real.
 */
import { buildEngine, type Engine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { engineSystem, type EngineSystem } from '../model/system.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { failedTurn } from './failed-turn.ts';
import { measureTurn, type MeasuredTurn } from './measured-turn.ts';
import { motionFrom, nextMilestone, type Milestone, type Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import type { TurnFailure } from './one-turn.ts';
import { outcomeOf } from './outcome-words.ts';
import type { Counters, SettledTurn } from './result.ts';
import { settle } from './settle.ts';
import { levelOf, settleByRoot, type Level } from './settled-root.ts';
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
import { silentRecorder } from './trace-recorder.ts';

/** Shares within which a turn repeats itself: rough ones to begin with, then as the answer is to be. */
const ROUGHLY = { speed: 1e-2, gas: 4e-2, enough: false };
const CLOSELY = { speed: 4e-4, gas: 2e-3 };

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
  readonly steppers: readonly Stepper[];
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
    recorder: silentRecorder,
    y: initialState(system, start.crank_angle, start.hand_speed),
    longestTime: run.longest_time,
  });
}

/** A level whose turns are measured, so that the one that repeats itself need not be run again for its figures. */
class MeasuringLevel implements Level {
  readonly speed = CLOSELY.speed;
  readonly gas = CLOSELY.gas;
  readonly enough = true;
  readonly stepper: Stepper;
  private readonly system: EngineSystem;
  private readonly state: Float64Array;
  private last: MeasuredTurn | undefined;

  constructor(system: EngineSystem, accuracy: Accuracy) {
    this.system = system;
    this.stepper = engineStepper(system, accuracy);
    this.state = new Float64Array(system.dimension);
  }

  turn(start: Float64Array): Float64Array | TurnFailure {
    this.state.set(start);
    const turn = measureTurn(this.system, this.stepper, this.state);
    if ('reason' in turn) return turn;
    this.last = turn;
    return turn.after;
  }

  settled(): SettledTurn {
    if (!this.last) throw new Error('no turn has been measured');
    return settledTurn(this.system, this.last);
  }
}

/** Undefined when there is no root to be found. */
function attemptByRoot(engine: Engine, spec: EngineSpec): Attempt | undefined {
  const motion = startOf(engine, spec, ROUGH, { totals: false, stretchSteps: ROUGH_STEPS });
  const { stepper } = motion;
  const first = nextMilestone(motion);
  // Between wide ports a rough step may end as far off as it began; that says nothing about the engine.
  if (first.kind === 'step-limit' || first.kind === 'non-finite') return undefined;
  if (first.kind !== 'turn') return { motion, end: first, steppers: [stepper], turns: 0 };
  const full = engineSystem(engine);
  // Quick steps make too much, or too little, of valves that snap open where no step can be told to end.
  const snaps = engine.passages.some(({ passage }) => passage.selfActing);
  const measuring = (snaps ? [CLOSER] : [QUICK, CLOSER]).map(
    (accuracy) => new MeasuringLevel(full, accuracy),
  );
  const search = settleByRoot(motion.system, motion.y, [levelOf(stepper, ROUGHLY), ...measuring]);
  if (search.kind !== 'settled') return undefined;
  return {
    motion,
    end: { kind: 'settled' },
    settled: measuring[search.level - 1]!.settled(),
    steppers: [stepper, ...measuring.map((level) => level.stepper)],
    turns: 1 + search.turns,
  };
}

function attemptBySpinning(engine: Engine, spec: EngineSpec): Attempt {
  const motion = startOf(engine, spec, FOLLOWING, { totals: true });
  const { system, stepper, y, startAngle } = motion;
  const fine = engineStepper(system, FINE);
  const { end } = settle(motion);
  const turns = Math.max(0, Math.floor((y[0]! - startAngle) / (2 * Math.PI)));
  const attempt = { motion, end, steppers: [stepper, fine], turns };
  if (end.kind !== 'settled') return attempt;
  const turn = measureTurn(system, fine, y);
  if ('reason' in turn) return { ...attempt, end: failedTurn(turn) };
  return { ...attempt, settled: settledTurn(system, turn) };
}

/** Runs a description that has passed its checks. Never throws for an engine that does not run. */
export function settledRunning(spec: EngineSpec): SettledAnswer {
  const engine = buildEngine(spec);
  const { motion, end, settled, steppers, turns } =
    attemptByRoot(engine, spec) ?? attemptBySpinning(engine, spec);
  const total = (key: 'derivativeCalls' | 'acceptedSteps'): number =>
    steppers.reduce((sum, { counters }) => sum + counters[key], 0);
  return {
    outcome: outcomeOf(motion, end, settled?.speed),
    ...(settled ? { settled } : {}),
    counters: { derivativeCalls: total('derivativeCalls'), acceptedSteps: total('acceptedSteps'), turns },
  };
}
