/**
 * The way to settled running: from the state after a start to near the one that a turn gives back.
 *
 * Gas in chest and cylinder forgets within a few turns, the flywheel remembers for hundreds. So the speed is led there, by
 * rough turns along which the tangent is followed: Newton's step from each (turn-tangent.ts) says where the energy gained in a
 * turn would be zero. From far off it is taken in leaps that the gas can follow by itself, from nearby by all unknowns
 * together.
 *
 * The way leads uphill in energy from the start: the root found is the first that the gain of energy meets, as in real
 * running, unless another hides within one leap.
 */
import { kineticEnergy } from '../model/ledger.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { pow } from '../numerics/elementary/power.ts';
import type { TurnFailure } from './one-turn.ts';
import { SLOW } from './speeds.ts';
import type { StepToRoot } from './turn-tangent.ts';

/** Longest leap, as a factor of the speed. */
export const LEAP = 2.2;

/** Steps shorter than this, as shares of the speed and of any mass or energy of gas, are taken by all unknowns together. */
const NEAR = { speed: 0.35, gas: 0.5 };

/**
 * Gains fall with this power of the speed: loads grow with its first or second, and what throttled air brings falls in
 * between. Found in trials: from half the settled speed of a shipped engine the step ends within a tenth of it.
 */
const POWER = 1.5;

const MOST_TURNS = 80;

/** Turns so slow are the last that are tried [rad/s]. */
const LEAST = 2 * SLOW;

/** A turn, and how far from the root its tangent finds it; undefined where that does not tell. */
export interface FollowedTurn {
  readonly after: Float64Array;
  readonly found: StepToRoot | undefined;
}

/** Follows the turn that begins at a state at top dead centre. */
export type Follow = (y: Float64Array) => FollowedTurn | TurnFailure;

/**
 * Air that was pressed into chest and hose while they filled is warm, and long in being flushed out; what will stand there
 * in settled running comes from the supply and has its temperature, or nearly.
 */
function flush({ engine, slots }: EngineSystem, y: Float64Array): void {
  const { gas, supply, volumes } = engine;
  for (const [i, { fixedVolume }] of volumes.entries())
    if (fixedVolume !== undefined)
      y[slots.mass(i)] = y[slots.energy(i)]! / (gas.heatCapacityAtConstantVolume * supply.temperature);
}

/** By what the speed at the beginning of a turn is to be multiplied. */
function wantedFactor(system: EngineSystem, y: Float64Array, { after, found }: FollowedTurn): number {
  // Where a turn gains more the faster it is, the root lies beyond what its tangent knows.
  if (!found?.settles) return after[SLOT.speed]! > y[SLOT.speed]! ? Infinity : 0;
  const share = found.step[0]! / kineticEnergy(system, y);
  return pow(Math.max(0, 1 + (POWER / 2) * share), 1 / POWER);
}

const isNear = ({ gas }: StepToRoot, factor: number): boolean =>
  Math.abs(factor - 1) < NEAR.speed && gas < NEAR.gas;

/** Moves `y`, a state at top dead centre, to near the root; false when it got nowhere. */
export function leadToRoot(system: EngineSystem, y: Float64Array, follow: Follow): boolean {
  flush(system, y);
  for (let turns = 0; turns < MOST_TURNS; turns += 1) {
    const turn = follow(y);
    if ('reason' in turn) return false;
    const { after, found } = turn;
    const speed = y[SLOT.speed]!;
    const factor = wantedFactor(system, y, turn);
    if (found && isNear(found, factor)) {
      for (const [k, component] of system.coupledInAngle.entries()) y[component]! += found.step[k]!;
      y[SLOT.speed] = speed * factor;
      return true;
    }
    const real = after[SLOT.speed]!;
    const leap = speed * Math.min(LEAP, Math.max(1 / LEAP, factor));
    y.set(after);
    y[SLOT.speed] = Math.max(LEAST, leap, real > speed * LEAP ? real : 0);
    // What is slower still is for those who follow it for real.
    if (speed === LEAST && y[SLOT.speed] === LEAST) return false;
  }
  return false;
}
