/**
 * Settled running as a root: a state at top dead centre that one turn gives back.
 *
 * Gas in chest and cylinder forgets within a few turns, the flywheel remembers for hundreds. So the speed is led: from
 * turn to turn it goes towards where the energy gained per turn would be zero, by the secant through the last two turns,
 * in leaps no longer than the gas can follow. Near the root all unknowns are solved for together by Broyden's method,
 * one turn a step.
 *
 * The leaps only ever lead uphill in energy: the root found is the first that the gain of energy meets on the way from the
 * start, as it would be in real running.
 */
import { broyden } from '../numerics/broyden.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { oneTurn, type TurnFailure } from './one-turn.ts';
import { SLOW } from './speeds.ts';
import type { Stepper } from './stepper.ts';

/** Longest leap, as a change of the logarithm of the speed. */
const LEAP = 0.5;

/** A leap shorter than this comes so near the root that all unknowns are solved for together. */
const NEAR = 0.2;

const MOST_TURNS = 80;

export interface Closeness {
  /** Share of the speed, and of any mass or energy of gas, by which a settled turn may fail to repeat itself. */
  readonly speed: number;
  readonly gas: number;
}

export type RootSearch =
  | { readonly kind: 'settled'; readonly turns: number }
  /** It cannot get round any more: the state is where it became too slow. */
  | { readonly kind: 'slow'; readonly turns: number }
  /** No root found within reach; nothing is said about the engine. */
  | { readonly kind: 'lost'; readonly turns: number }
  | { readonly kind: 'failed'; readonly failure: TurnFailure; readonly turns: number };

/** A turn tried from a speed: what the energy gained, and how much per unit of the logarithm of the speed. */
interface Trial {
  readonly logSpeed: number;
  readonly gain: number;
}

export function settleByRoot(
  system: EngineSystem,
  stepper: Stepper,
  y: Float64Array,
  close: Closeness,
): RootSearch {
  const { slots } = system;
  const moment = system.momentOfInertia(0);
  const after = y.slice();
  let turns = 0;

  /** Runs a turn from `y` into `after`; both stand at top dead centre, at angle 0. */
  const turn = (): TurnFailure | undefined => {
    turns += 1;
    y[SLOT.crankAngle] = 0;
    after.set(y);
    const failure = oneTurn(system, stepper, after);
    after[SLOT.crankAngle] = 0;
    return failure;
  };
  const gain = (): number => 0.5 * moment * (after[SLOT.speed]! ** 2 - y[SLOT.speed]! ** 2);
  const ended = (failure: TurnFailure): RootSearch => {
    y.set(after);
    return failure.reason === 'slow' ? { kind: 'slow', turns } : { kind: 'failed', failure, turns };
  };

  let last: Trial | undefined;
  /** −d gain / d log speed, once two turns have shown it. */
  let slope = NaN;
  for (;;) {
    if (turns >= MOST_TURNS) return { kind: 'lost', turns };
    const failure = turn();
    if (failure) return ended(failure);
    const now: Trial = { logSpeed: Math.log(y[SLOT.speed]!), gain: gain() };
    if (last && Math.abs(now.logSpeed - last.logSpeed) > 1e-6)
      slope = (last.gain - now.gain) / (now.logSpeed - last.logSpeed);
    last = now;
    const real = Math.log(after[SLOT.speed]!) - now.logSpeed;
    const wanted = slope > 0 ? now.gain / slope : Math.sign(now.gain) * LEAP;
    const leap = Math.abs(real) > LEAP ? real : Math.max(-LEAP, Math.min(LEAP, wanted));
    if (slope > 0 && Math.abs(leap) < NEAR) break;
    y.set(after);
    y[SLOT.speed] = Math.max(2 * SLOW, Math.exp(now.logSpeed + leap));
  }

  // Unknowns: logarithm of the speed, then mass and energy of every volume as a share of what they are now.
  const size = 1 + slots.firstTotal - slots.mass(0);
  const scale = after.slice(slots.mass(0), slots.firstTotal);
  const residual = new Float64Array(size);
  const taken = new Float64Array(size);
  const solver = broyden(size);
  const setResidual = (): void => {
    residual[0] = gain() / slope;
    for (let i = 1; i < size; i += 1) {
      const slot = slots.mass(0) + i - 1;
      residual[i] = (after[slot]! - y[slot]!) / scale[i - 1]!;
    }
  };
  for (;;) {
    setResidual();
    if (taken[0] !== 0) solver.learn(taken, residual);
    const gasError = residual.subarray(1).reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (Math.abs(residual[0]!) < close.speed && gasError < close.gas) return { kind: 'settled', turns };
    if (turns >= MOST_TURNS) return { kind: 'lost', turns };
    const step = solver.step(residual);
    const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const share = Math.min(1, LEAP / longest);
    for (let i = 0; i < size; i += 1) taken[i] = share * step[i]!;
    y[SLOT.speed]! *= Math.exp(taken[0]!);
    for (let i = 1; i < size; i += 1) y[slots.mass(0) + i - 1]! += taken[i]! * scale[i - 1]!;
    const failure = turn();
    if (failure) return ended(failure);
  }
}
