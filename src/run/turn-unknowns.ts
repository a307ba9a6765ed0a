/**
 * What has to be found for a turn that repeats itself: the speed, and energy and temperature of every volume, as shares of
 * what they are; solved for together by Broyden's method, one turn a step.
 *
 * In chest and hose the temperature goes slowly, by the share of their air that a turn replaces; an error that a turn mends
 * by so little is that much larger than it looks.
 */
import { broyden } from '../numerics/broyden.ts';
import { FIRST_VOLUME } from '../model/engine.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { exp } from '../numerics/elementary/exponential.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { strokeFraction } from '../parts/crank-train.ts';

/** Longest step of any unknown. */
const LONGEST_STEP = 0.3;

/** Gain falls with speed: a step of the speed follows its error, and by so many times of it at most, whatever was learnt. */
const MOST_TRUST = 3;

/** Shares of the speed, and of any energy or temperature of gas, within which a turn repeats itself. */
export interface Closeness {
  readonly speed: number;
  readonly gas: number;
}

export interface TurnUnknowns {
  /** Takes the errors that one turn from `y` shows, and learns from the last step, if any. */
  look(after: Float64Array): void;
  /** Whether all errors, as last looked at, are that small. */
  isWithin(close: Closeness): boolean;
  /** Moves `y` to where the errors are expected to vanish. */
  step(): void;
  /** The next look is at a different kind of turn from the same state. */
  startAgain(): void;
}

function trusted(step: number, error: number): number {
  const least = Math.abs(error) / MOST_TRUST;
  const size = Math.min(Math.abs(error) * MOST_TRUST, Math.max(least, step * Math.sign(error)));
  return size * Math.sign(error);
}

/** What a change of temperature in a turn is multiplied by to estimate its error, for every volume. */
function temperatureFactors({ engine, slots }: EngineSystem, y: Float64Array): Float64Array {
  const { ends, volumes, gas, chest } = engine;
  const chestDensity =
    y[slots.mass(chest - FIRST_VOLUME)]! / (volumes[chest - FIRST_VOLUME]!.fixedVolume ?? 1);
  // What fills the ends up to their cut-off, at the density of the chest.
  const filled = ends.reduce((sum, { clearanceVolume, sweptVolume, valveGear }) => {
    const share = strokeFraction(engine.crank, valveGear.events.cutOff);
    return sum + clearanceVolume + share * sweptVolume;
  }, 0);
  return Float64Array.from(volumes, ({ fixedVolume }, i) => {
    if (fixedVolume === undefined) return 1;
    const replaced = (filled * chestDensity * gas.heatCapacityRatio) / y[slots.mass(i)]!;
    return 1 / (1 - exp(-replaced));
  });
}

/**
 * The unknowns at `y`, a state at top dead centre. `slope` is what a turn loses of its gain in energy when the logarithm
 * of the speed grows [J]; without it the speed is no unknown.
 */
export function turnUnknowns(system: EngineSystem, y: Float64Array, slope?: number): TurnUnknowns {
  const { slots, engine } = system;
  const energySlot = Int32Array.from(engine.volumes, (_, i) => slots.energy(i));
  const factors = temperatureFactors(system, y);
  const moment = system.momentOfInertia(0);
  const first = slope === undefined ? 0 : 1;
  const size = first + 2 * energySlot.length;
  const error = new Float64Array(size);
  const taken = new Float64Array(size);
  const solver = broyden(size);
  let stepped = false;

  return {
    look(after) {
      if (slope !== undefined)
        error[0] = (0.5 * moment * (square(after[SLOT.speed]!) - square(y[SLOT.speed]!))) / slope;
      for (const [i, slot] of energySlot.entries()) {
        const energy = y[slot]!;
        const temperature = energy / y[slot - 1]!;
        error[first + 2 * i] = after[slot]! / energy - 1;
        error[first + 2 * i + 1] = (after[slot]! / after[slot - 1]! / temperature - 1) * factors[i]!;
      }
      if (stepped) solver.learn(taken, error);
      stepped = false;
    },
    isWithin: (close) => error.every((value, i) => Math.abs(value) < (i < first ? close.speed : close.gas)),
    step() {
      const whole = solver.step(error);
      const longest = whole.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      for (let i = 0; i < size; i += 1) taken[i] = whole[i]! * Math.min(1, LONGEST_STEP / longest);
      if (first === 1) taken[0] = trusted(taken[0]!, error[0]!);
      if (first === 1) y[SLOT.speed]! *= exp(taken[0]!);
      for (const [i, slot] of energySlot.entries()) {
        const grown = 1 + taken[first + 2 * i]!;
        y[slot]! *= grown;
        y[slot - 1]! *= grown / (1 + taken[first + 2 * i + 1]!);
      }
      stepped = true;
    },
    startAgain() {
      stepped = false;
    },
  };
}
