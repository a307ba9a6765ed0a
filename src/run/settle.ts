/**
 * From turn to turn towards the settled cycle.
 *
 * A flywheel approaches its settled speed like a geometric series: ω_{k+1} − ω* = λ (ω_k − ω*). Once that is plain from
 * three turns and little is left, the settled state is found as a root. The engine is spun up for real until then, so the
 * outcome is the one reached from this start.
 */
import { SLOT } from '../model/slots.ts';
import { nextMilestone, type Milestone, type Motion } from './motion.ts';
import { levelOf, settleByRoot, type Level } from './settled-root.ts';
import { engineStepper, FINE } from './stepper.ts';

/** Share of the speed still to come below which the root is looked for, and below which a turn counts as settled. */
const NEAR = 0.01;
const DONE = 2e-5;

/** A trend is a series when its factor is below this; flywheels beyond are spun on. */
const SLOWEST_FACTOR = 0.9995;

/** Shares within which a turn repeats itself: first, and in the end. */
const CLOSE = { speed: 1e-3, gas: 5e-3, enough: false };
const CLOSEST = { speed: 5e-6, gas: 5e-5, enough: true };

export interface Settling {
  readonly end: Milestone | { readonly kind: 'settled' };
  /** State at the moment the real spin-up ended. */
  readonly spunUp: Float64Array;
}

interface Trend {
  /** Estimated distance of the last speed from the limit [rad/s], signed. */
  readonly left: number;
  readonly plain: boolean;
  readonly factor: number;
}

/** What three successive speeds say about their limit. */
function trendOf(speeds: readonly number[]): Trend {
  const [a, b, c] = speeds.slice(-3) as [number, number, number];
  const before = b - a;
  const last = c - b;
  if (before === 0 || last === 0) return { left: last, plain: true, factor: 0 };
  const factor = last / before;
  if (factor > SLOWEST_FACTOR || factor < -0.9)
    return { left: last / (1 - SLOWEST_FACTOR), plain: false, factor };
  return { left: (last * factor) / (1 - factor), plain: true, factor };
}

/** The settled state near that of a motion, if its turns come to repeat themselves. */
function rootNear({ system, stepper, y }: Motion, factor: number): Float64Array | undefined {
  const settled = y.slice();
  const speed = y[SLOT.speed]!;
  const slope = system.momentOfInertia(0) * speed * speed * (1 - factor);
  const levels: [Level, Level] = [levelOf(stepper, CLOSE), levelOf(engineStepper(system, FINE), CLOSEST)];
  const { kind } = settleByRoot(system, settled, levels, slope);
  const isNear = Math.abs(settled[SLOT.speed]! / speed - 1) < 5 * NEAR;
  return kind === 'settled' && isNear ? settled : undefined;
}

/** Lets the engine run until a turn repeats itself, or it does not. */
export function settle(motion: Motion): Settling {
  const { y } = motion;
  const speeds: number[] = [];
  let lookAgainAt = 3;
  for (;;) {
    const milestone = nextMilestone(motion);
    if (milestone.kind !== 'turn') return { end: milestone, spunUp: y.slice() };
    const speed = y[SLOT.speed]!;
    speeds.push(speed);
    if (speeds.length < lookAgainAt) continue;
    const { left, plain, factor } = trendOf(speeds);
    if (!plain || Math.abs(left) > NEAR * speed) continue;
    const spunUp = y.slice();
    const root = rootNear(motion, factor);
    if (root) y.set(root);
    const lastChange = Math.abs(speed - speeds.at(-2)!);
    if (root ?? (Math.abs(left) < DONE * speed && lastChange < DONE * speed))
      return { end: { kind: 'settled' }, spunUp };
    lookAgainAt = 2 * speeds.length;
  }
}
