/**
 * From turn to turn towards the settled cycle.
 *
 * The state at top dead centre maps to itself a turn later; the settled cycle is the fixed point of that map. Near it the
 * states approach like a few geometric series, of the flywheel and of the gas in the chest, whose limit can be computed
 * from four successive turns. The state is set to that limit and the next turns judge it: settled is a root, not a wait.
 *
 * The limit never moves the speed by more than half at a time, and three turns must confirm it.
 */
import { SLOT } from '../model/slots.ts';
import { extrapolatedLimit } from '../numerics/vector-extrapolation.ts';
import { nextMilestone, type Milestone, type Motion } from './motion.ts';

/** A turn that changes no unknown by more than this share counts as settled, if the series have no more to give. */
const DONE = 2e-6;

/** Successive states that a limit is computed from. */
const STATES = 4;

const LARGEST_STRIDE = 1.5;

/** Share of the speed still to come below which the real spin-up gives way to the limit. */
const NEAR = 0.01;

export interface Settling {
  readonly end: Milestone | { readonly kind: 'settled' };
  /** State at the moment the real spin-up ended: before the first jump, or at the end. */
  readonly spunUp: Float64Array;
}

/** The unknowns that repeat from turn to turn: speed, then mass and energy of every volume. */
const repeating = (motion: Motion): Float64Array =>
  motion.y.slice(SLOT.speed, motion.system.slots.firstTotal);

function largestChange(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]!) / Math.abs(b[i]!)), 0);
}

/** Where the series lead, at most a stride away; undefined when they do not tell. */
function guardedLimit(states: readonly Float64Array[]): Float64Array | undefined {
  const last = states.at(-1)!;
  const limit = extrapolatedLimit(states, last.map(Math.abs));
  if (!limit || limit.some((value) => !(value > 0))) return undefined;
  const speed = last[0]!;
  limit[0] = Math.min(speed * LARGEST_STRIDE, Math.max(speed / LARGEST_STRIDE, limit[0]!));
  return limit;
}

/** Lets the engine run until a turn repeats itself, or it does not. */
export function settle(motion: Motion): Settling {
  const { y } = motion;
  let spunUp: Float64Array | undefined;
  let states: Float64Array[] = [];
  for (;;) {
    const milestone = nextMilestone(motion);
    if (milestone.kind !== 'turn') return { end: milestone, spunUp: spunUp ?? y.slice() };
    states.push(repeating(motion));
    if (states.length > STATES) states.shift();
    const before = states.at(-2);
    if (before === undefined) continue;
    if (states.length < STATES) continue;
    const now = states.at(-1)!;
    const limit = guardedLimit(states);
    const left = limit ? largestChange(limit, now) : Infinity;
    if (left < DONE && largestChange(now, before) < DONE) {
      return { end: { kind: 'settled' }, spunUp: spunUp ?? y.slice() };
    }
    if (!limit || (spunUp === undefined && left > NEAR)) continue;
    spunUp ??= y.slice();
    motion.recorder.pause();
    y.set(limit, SLOT.speed);
    states = [];
  }
}
