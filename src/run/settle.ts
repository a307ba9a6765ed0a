/**
 * From turn to turn towards the settled cycle.
 *
 * A flywheel approaches its settled speed like a geometric series: ω_{k+1} − ω* = λ (ω_k − ω*). Once that is plain from
 * three turns and little is left, the speed is set to the limit of the series and the gas given a few turns to follow;
 * repeated until the limit stands. The engine is spun up for real until then, so the outcome is the one reached from
 * this start.
 */
import { SLOT } from '../model/slots.ts';
import { nextMilestone, type Milestone, type Motion } from './motion.ts';

/** Turns that the gas in chest and cylinder gets to follow a new speed before its trend is judged. */
const TURNS_TO_FOLLOW = 3;

/** Share of the speed still to come below which the series is trusted, and below which it counts as summed. */
const NEAR = 0.01;
const DONE = 2e-6;

/** A trend is a series when its factor is below this; flywheels beyond are spun on. */
const SLOWEST_FACTOR = 0.9995;

export interface Settling {
  readonly end: Milestone | { readonly kind: 'settled' };
  /** State at the moment the real spin-up ended: before the first jump, or at the end. */
  readonly spunUp: Float64Array;
}

interface Trend {
  /** Estimated distance of the last speed from the limit [rad/s], signed. */
  readonly left: number;
  readonly plain: boolean;
}

/** What three successive speeds say about their limit. */
function trendOf(speeds: readonly number[]): Trend {
  const [a, b, c] = speeds.slice(-3) as [number, number, number];
  const before = b - a;
  const last = c - b;
  if (before === 0 || last === 0) return { left: last, plain: true };
  const factor = last / before;
  if (factor > SLOWEST_FACTOR || factor < -0.9) return { left: last / (1 - SLOWEST_FACTOR), plain: false };
  return { left: (last * factor) / (1 - factor), plain: true };
}

/** Lets the engine run until a turn repeats itself, or it does not. */
export function settle(motion: Motion): Settling {
  const { y } = motion;
  let spunUp: Float64Array | undefined;
  let speeds: number[] = [];
  let wait = 0;
  for (;;) {
    const milestone = nextMilestone(motion);
    if (milestone.kind !== 'turn') return { end: milestone, spunUp: spunUp ?? y.slice() };
    if (wait > 0) {
      wait -= 1;
      speeds = [];
      continue;
    }
    const speed = y[SLOT.speed]!;
    speeds.push(speed);
    if (speeds.length < 3) continue;
    const { left, plain } = trendOf(speeds);
    const lastChange = Math.abs(speed - speeds.at(-2)!);
    if (Math.abs(left) < DONE * speed && lastChange < DONE * speed) {
      return { end: { kind: 'settled' }, spunUp: spunUp ?? y.slice() };
    }
    if (!plain || Math.abs(left) > NEAR * speed) continue;
    spunUp ??= y.slice();
    motion.recorder.pause();
    y[SLOT.speed] = speed + left;
    wait = TURNS_TO_FOLLOW;
  }
}
