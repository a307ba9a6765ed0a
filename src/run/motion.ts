/**
 * Moves an engine from rest or from a push, over rest, break-away, slow turning and running, to the next milestone.
 *
 * Known kinks of the right-hand side (port edges, dead centres) are scheduled stops. Coming to rest and breaking away are
 * events found on the way. Between them the state moves in crank angle where that is well behaved, else in time.
 */
import type { Arrival, EventFunction, Journey } from '../numerics/integrator.ts';
import { kineticEnergy } from '../model/ledger.ts';
import { SLOT } from '../model/slots.ts';
import { FIRST_VOLUME } from '../model/engine.ts';
import type { Direction, EngineSystem } from '../model/system.ts';
import { BRISK, SLOW } from './speeds.ts';
import type { Stepper } from './stepper.ts';
import { torqueBalance } from './torque-balance.ts';
import type { TraceRecorder } from './trace-recorder.ts';

const TURN = 2 * Math.PI;

/**
 * Rest is for good once the chest is full, its pressure changing by less than this share per second, and the torque that
 * is missing would take longer than this [s] to build up at its present pace.
 */
const FULL = 1e-2;
const PATIENCE = 60;

/**
 * An engine that a leak pushes along by inches is not starting. Progress is looked at in windows of time [s]; below the
 * angle [rad] per window, and without growing to half as much again as in the window before, it is creeping.
 */
const CREEP_WINDOW = 10;
const CREEP_ANGLE = 0.5;

/** Steps for one stretch between two stops, if nothing else is said; the stiffest shipped engine needs a tenth. */
const STRETCH_STEPS = 40_000;

/** Steps for a whole run; the one that is longest in settling, of those that are shipped, needs a hundredth. */
const RUN_STEPS = 2_000_000;

/** What stops within so little [rad] has stopped: no step would lead from here to there. */
const ON_THE_SPOT = 1e-12;

/** Turns backwards after which nothing else is to be expected. */
const BACKWARD_TURNS = 3;

export type Milestone =
  /** Top dead centre passed forward, once more than ever before. */
  | { readonly kind: 'turn' }
  | { readonly kind: 'rest' }
  | { readonly kind: 'creeps' }
  | { readonly kind: 'backwards' }
  | { readonly kind: 'time over' }
  /** Goes on turning, but all but stops on its way round. */
  | { readonly kind: 'hardly gets round' }
  | { readonly kind: 'step-limit' }
  | { readonly kind: 'non-finite'; readonly component: number };

export interface Motion {
  readonly system: EngineSystem;
  readonly stepper: Stepper;
  /** Without one, nobody wants to see the way. */
  readonly recorder?: TraceRecorder | undefined;
  readonly y: Float64Array;
  readonly longestTime: number;
  readonly startAngle: number;
  /** Most steps for one stretch between two stops. */
  readonly stretchSteps: number;
  /** Highest crank angle at which a turn has been announced. */
  announced: number;
  /** The window in which slow progress is being watched: when and where it began, and how far the last one got. */
  watch: { readonly since: number; readonly angle: number; readonly lastProgress: number };
}

/** A motion about to begin from a state that may already turn. */
export function motionFrom(
  parts: Pick<Motion, 'system' | 'stepper' | 'recorder' | 'y' | 'longestTime'> &
    Partial<Pick<Motion, 'stretchSteps'>>,
): Motion {
  const startAngle = parts.y[SLOT.crankAngle]!;
  return {
    stretchSteps: STRETCH_STEPS,
    ...parts,
    startAngle,
    announced: Math.floor(startAngle / TURN) * TURN,
    watch: { since: parts.y[SLOT.time]!, angle: startAngle, lastProgress: 0 },
  };
}

/** Closes the window when its time is up, and says whether the engine has only crept along in it. */
function isCreeping(motion: Motion): boolean {
  const { y, watch } = motion;
  const time = y[SLOT.time]!;
  // Said as the stretch before said it, or rounding may leave a window that is neither open nor over.
  if (time < watch.since + CREEP_WINDOW) return false;
  const angle = y[SLOT.crankAngle]!;
  const progress = Math.abs(angle - watch.angle);
  motion.watch = { since: time, angle, lastProgress: progress };
  return progress > 0 && progress < CREEP_ANGLE && progress < 1.5 * watch.lastProgress;
}

/** Carries `motion.y` on to the next milestone. */
export function nextMilestone(motion: Motion): Milestone {
  let restLeftAt = NaN;
  let margin = 1e-9;
  for (;;) {
    const { y } = motion;
    if (y[SLOT.time]! >= motion.longestTime) return { kind: 'time over' };
    if (y[SLOT.speed] === 0) {
      // Stopped again on the spot: rounding made it move off; ask for a little more torque next time.
      margin = Math.abs(y[SLOT.crankAngle]! - restLeftAt) < 1e-7 ? 4 * margin : 1e-9;
      const end = waitAtRest(motion, margin);
      if (end) return end;
      restLeftAt = y[SLOT.crankAngle]!;
    }
    const end = keepTurning(motion);
    if (end) return end;
  }
}

function journeyOf({ recorder, stretchSteps }: Motion, events: readonly EventFunction[]): Journey {
  if (!recorder) return { events, stepLimit: stretchSteps };
  return {
    events,
    stepLimit: stretchSteps,
    onStep: (step) => {
      recorder.note((i) => step.component(i, step.to));
    },
  };
}

/** The milestone that ends a run in failure, if the arrival is one or the state has left the physical range. */
function failure(motion: Motion, arrival: Arrival): Milestone | undefined {
  if (arrival.reason === 'step-limit') return { kind: 'step-limit' };
  if (arrival.reason === 'non-finite') return { kind: 'non-finite', component: arrival.component };
  const { slots } = motion.system;
  for (let i = 0; i < slots.firstTotal; i += 1) {
    const value = motion.y[i]!;
    // Mass and energy of a volume stay above zero.
    if (!Number.isFinite(value) || (i >= slots.mass(0) && value <= 0))
      return { kind: 'non-finite', component: i };
  }
  return undefined;
}

/** Lets the gas move while the crank stands, until it breaks away (undefined) or nothing more will happen. */
function waitAtRest(motion: Motion, margin: number): Milestone | undefined {
  const { system, y } = motion;
  const scratch = y.slice();
  const holdsBy = (state: Float64Array): number => {
    const { applied, holding } = torqueBalance(system, state);
    return holding * (1 + margin) - Math.abs(applied) + Number.MIN_VALUE;
  };
  const breaksAway: EventFunction = {
    value: (_x, component) => {
      for (let i = 0; i < system.slots.firstTotal; i += 1) scratch[i] = component(i);
      return holdsBy(scratch);
    },
  };
  let wait = 0.02;
  while (holdsBy(y) > 0) {
    const missingBefore = holdsBy(y);
    const until = Math.min(motion.longestTime, y[SLOT.time]! + wait);
    const arrival = motion.stepper.inTime(0, y, until, journeyOf(motion, [breaksAway]));
    const failed = failure(motion, arrival);
    if (failed) return failed;
    if (arrival.reason === 'event') break;
    const missing = holdsBy(y);
    const gainedPerSecond = (missingBefore - missing) / wait;
    if (missing > PATIENCE * gainedPerSecond && chestIsFull(system, y)) return { kind: 'rest' };
    if (y[SLOT.time]! >= motion.longestTime) return { kind: 'time over' };
    wait = Math.min(1, 2 * wait);
  }
  return undefined;
}

function chestIsFull(system: EngineSystem, y: Float64Array): boolean {
  const slopes = new Float64Array(system.dimension);
  system.timeSlopes(0, y, slopes);
  const energy = system.slots.energy(system.engine.chest - FIRST_VOLUME);
  return Math.abs(slopes[energy]!) < FULL * y[energy]!;
}

/** Turns on, one way, until the crank stops (undefined) or a milestone is reached. */
function keepTurning(motion: Motion): Milestone | undefined {
  const { y, system } = motion;
  const speed = y[SLOT.speed]!;
  const way = speed === 0 ? Math.sign(torqueBalance(system, y).applied) : Math.sign(speed);
  const direction: Direction = way < 0 ? -1 : 1;
  for (;;) {
    if (motion.stepper.counters.acceptedSteps > RUN_STEPS) return { kind: 'step-limit' };
    if (isCreeping(motion)) return { kind: 'creeps' };
    if (stopsOnTheSpot(motion, direction)) return undefined;
    const brisk = direction === 1 && y[SLOT.speed]! >= BRISK;
    const end = brisk ? briskStretch(motion) : slowStretch(motion, direction);
    if (end) return end;
    if (y[SLOT.speed] === 0) return undefined;
    if (y[SLOT.time]! >= motion.longestTime) return { kind: 'time over' };
    if (brisk) motion.watch = { since: y[SLOT.time]!, angle: y[SLOT.crankAngle]!, lastProgress: 0 };
  }
}

/** On in crank angle to the next edge, or until the engine has become slow. */
function briskStretch(motion: Motion): Milestone | undefined {
  const { y } = motion;
  const target = nextEdge(motion, 1);
  const slow: EventFunction = { value: (_x, component) => component(SLOT.speed) - SLOW };
  const calmAbove = motion.recorder ? undefined : { component: SLOT.speed, value: SLOW };
  const arrival = motion.stepper.inAngle(y, target, { ...journeyOf(motion, [slow]), calmAbove });
  const failed = failure(motion, arrival);
  if (failed) return failed;
  if (arrival.reason !== 'end') return undefined;
  return turnMilestone(motion);
}

/** Whether what is left of the motion of a light crank is gone at once; it then goes into the bearings. */
function stopsOnTheSpot({ system, y }: Motion, direction: 1 | -1): boolean {
  const { applied, holding } = torqueBalance(system, y);
  const { bearingTorque, pistonTorque, gearTorque, loadTorque } = system.observe(y);
  const push = direction * applied;
  const braking = Math.max(holding, bearingTorque + pistonTorque + gearTorque + loadTorque) - push;
  const kinetic = kineticEnergy(system, y);
  if (kinetic === 0 || holding <= push || kinetic > ON_THE_SPOT * braking) return false;
  y[system.slots.bearingWork]! += kinetic;
  y[SLOT.speed] = 0;
  return true;
}

/** On in time to the next edge, to rest, or until the engine has become brisk. */
function slowStretch(motion: Motion, direction: 1 | -1): Milestone | undefined {
  const { y } = motion;
  const target = nextEdge(motion, direction);
  // Starting from rest the speed is zero; the hair keeps that from being a stop, and finds a fall back below it.
  const hair = 1e-9;
  const events: EventFunction[] = [
    { value: (_x, component) => direction * (target - component(SLOT.crankAngle)) },
    { value: (_x, component) => direction * component(SLOT.speed) + hair },
    { value: (_x, component) => (direction === 1 ? BRISK - component(SLOT.speed) : 1) },
  ];
  const until = Math.min(motion.longestTime, motion.watch.since + CREEP_WINDOW);
  const arrival = motion.stepper.inTime(direction, y, until, journeyOf(motion, events));
  const failed = failure(motion, arrival);
  if (failed) return failed;
  if (arrival.reason !== 'event') return undefined;
  if (arrival.event === 0) {
    y[SLOT.crankAngle] = target;
    if (target <= motion.startAngle - BACKWARD_TURNS * TURN) return { kind: 'backwards' };
    return turnMilestone(motion);
  }
  if (arrival.event === 1) {
    y[SLOT.speed] = 0;
    motion.recorder?.mark((i) => y[i]!);
  }
  if (arrival.event === 2) y[SLOT.speed] = BRISK;
  return undefined;
}

function turnMilestone(motion: Motion): Milestone | undefined {
  const angle = motion.y[SLOT.crankAngle]!;
  const turns = Math.round(angle / TURN);
  if (angle !== turns * TURN || angle <= motion.announced) return undefined;
  motion.announced = angle;
  return { kind: 'turn' };
}

/** The nearest edge strictly ahead in a direction, as an unwrapped crank angle. */
function nextEdge({ stepper, y }: Motion, direction: 1 | -1): number {
  const edges = stepper.stops;
  const angle = y[SLOT.crankAngle]!;
  const turn = Math.floor(angle / TURN);
  for (const offset of [0, 1]) {
    const base = (turn + direction * offset) * TURN;
    const ordered = direction === 1 ? edges : edges.toReversed();
    const ahead = ordered.find((edge) => direction * (base + edge - angle) > 1e-9);
    if (ahead !== undefined) return base + ahead;
  }
  return angle + direction * TURN;
}
