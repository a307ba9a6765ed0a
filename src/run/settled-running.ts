/**
 * The settled answer, quickly: does the engine get going from its start, and how does it run then? For sweeps, searches
 * and curves; `runEngine` tells the whole story of one engine.
 *
 * The start is followed for real to the first whole turn, roughly, and where it is doubtful once more and closely. From there
 * rough turns lead near the settled state, which is a root, and the tangent of a closer one tells the rest. An engine for which
 * that leads nowhere, because it stalls again or because its turns never come to repeat themselves, is spun on for real.
 */
import { buildEngine, type Engine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { kineticEnergy } from '../model/ledger.ts';
import { SLOT } from '../model/slots.ts';
import { engineSystem, type EngineSystem } from '../model/system.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { failedTurn } from './failed-turn.ts';
import { LEAP, leadToRoot } from './lead-to-root.ts';
import { measureTurn } from './measured-turn.ts';
import { motionFrom, nextMilestone, type Milestone, type Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import { outcomeOf } from './outcome-words.ts';
import type { Counters, SettledTurn } from './result.ts';
import { settle } from './settle.ts';
import { settledTurn } from './settled-cycle.ts';
import { CLOSER, engineStepper, FINE, FOLLOWING, QUICK, ROUGH, type Stepper } from './stepper.ts';
import { TangentTurns } from './tangent-turns.ts';
import type { Closeness } from './turn-unknowns.ts';

/** How near to the root a turn has to be to tell it; nearer where valves snap open, as tangents know nothing of when. */
const NEAR: Closeness = { speed: 2e-2, gas: 5e-2 };
const NEARER: Closeness = { speed: 2e-3, gas: 1e-2 };

/**
 * An engine that passes its first top dead centre with less than this share of what a stroke at full pressure would bring
 * hardly gets round, and rough steps may have carried it over what stops it. With so much gained on the way it will get round
 * again, and at a higher speed more easily still.
 */
const PLENTY = 0.03;

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

function motionOf(
  system: EngineSystem,
  stepper: Stepper,
  { start, run }: EngineSpec,
  stretchSteps?: number,
): Motion {
  return motionFrom({
    ...(stretchSteps === undefined ? {} : { stretchSteps }),
    system,
    stepper,
    y: initialState(system, start.crank_angle, start.hand_speed),
    longestTime: run.longest_time,
  });
}

/** The way to the first whole turn. */
interface Start {
  readonly motion: Motion;
  readonly end: Milestone;
  /** Kinetic energy at the end, and what it grew by on the way, as shares of the work of a stroke at full pressure. */
  readonly energy: number;
  readonly gained: number;
}

function followStart(system: EngineSystem, stepper: Stepper, spec: EngineSpec): Start {
  const { supply, atmosphere, ends } = system.engine;
  const sweptVolume = ends.reduce((sum, end) => sum + end.sweptVolume, 0);
  const stroke = (supply.pressure - atmosphere.pressure) * sweptVolume;
  const motion = motionOf(system, stepper, spec, ROUGH_STEPS);
  const before = kineticEnergy(system, motion.y);
  const end = nextMilestone(motion);
  const after = kineticEnergy(system, motion.y);
  return { motion, end, energy: after / stroke, gained: (after - before) / stroke };
}

/** Undefined when there is no root to be found. */
function attemptByRoot(engine: Engine, spec: EngineSpec): Attempt | undefined {
  const bare = engineSystem(engine, { totals: false });
  const roughly = engineStepper(bare, ROUGH);
  const closely = engineStepper(bare, QUICK);
  const rough = new TangentTurns(bare, roughly);
  const roughStart = followStart(bare, roughly, spec);
  const isDoubtful = roughStart.end.kind === 'turn' && roughStart.energy < PLENTY;
  const { motion, end, gained } = isDoubtful ? followStart(bare, closely, spec) : roughStart;
  const counted = [rough, closely];
  // Between wide ports a rough step may end as far off as it began; that says nothing about the engine.
  if (end.kind === 'step-limit' || end.kind === 'non-finite') return undefined;
  if (end.kind !== 'turn') return { motion, end, counted, turns: 0 };
  const { y } = motion;
  if (gained > PLENTY) y[SLOT.speed]! *= LEAP;
  if (!leadToRoot(bare, y, (before) => rough.follow(before))) return undefined;
  const told = tellRoot(engine, y);
  return (
    told && {
      motion,
      end: { kind: 'settled' },
      settled: told.settled,
      counted: [...counted, ...told.ways],
      turns: [rough, ...told.ways].reduce((sum, { turns }) => sum + turns, 1),
    }
  );
}

/** Settled running by closer turns that begin near it, and the ways it took to find it. */
function tellRoot(
  engine: Engine,
  near: Float64Array,
): { readonly settled: SettledTurn; readonly ways: readonly TangentTurns[] } | undefined {
  const system = engineSystem(engine);
  const y = new Float64Array(system.dimension);
  y.set(near);
  // Quick steps make too much, or too little, of valves that snap open where no step can be told to end.
  const snaps = engine.passages.some(({ passage }) => passage.selfActing);
  const ways: TangentTurns[] = [];
  for (const accuracy of snaps ? [CLOSER] : [QUICK, CLOSER]) {
    const way = new TangentTurns(system, engineStepper(system, accuracy));
    ways.push(way);
    const turn = way.turnAtRoot(y, snaps ? NEARER : NEAR);
    if (turn === undefined) continue;
    return 'reason' in turn ? undefined : { settled: settledTurn(system, turn), ways };
  }
  return undefined;
}

function attemptBySpinning(engine: Engine, spec: EngineSpec): Attempt {
  const system = engineSystem(engine);
  const stepper = engineStepper(system, FOLLOWING);
  const motion = motionOf(system, stepper, spec);
  const { y, startAngle } = motion;
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
