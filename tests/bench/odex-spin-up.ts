/**
 * The comparison: an engine spun up from a push with the extrapolation method in time, turn after turn, until two
 * successive turns are within 0.1 % of the settled speed. It is told that speed, so that knowing when to stop costs it
 * nothing, and follows no ledgers.
 */
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import type { EventFunction, Tolerances } from '../../src/numerics/integrator.ts';
import { odexIntegrator } from '../../src/numerics/odex-integrator.ts';
import { SETTLED_WITHIN, type Push } from './task.ts';

const FULL_TURN = 2 * Math.PI;
const MOST_STEPS = 1e7;
const MOST_TURNS = 3000;

/** From loose to tight. */
const TOLERANCES = [1e-3, 3e-4, 1e-4, 3e-5, 1e-5, 1e-6];

/** A spin-up that gains less than this share of its speed in so many turns goes nowhere else. */
const STALLED = { turns: 50, gain: 1e-4 };

export interface SpinUp {
  readonly settled: boolean;
  /** Mean speed [rad/s] of the last turn. */
  readonly speed: number;
  readonly derivativeCalls: number;
  readonly turns: number;
}

/** Room air in the smallest each volume gets counts as its size; time and angle are exact anyway. */
function tolerancesOf({ engine, slots, dimension }: EngineSystem, relative: number): Tolerances {
  const { gas, atmosphere, volumes, ends } = engine;
  const absolute = new Float64Array(dimension).fill(1e-2 * relative);
  absolute[SLOT.speed] = 1e-1 * relative;
  for (const [i, { fixedVolume }] of volumes.entries()) {
    const volume = fixedVolume ?? ends[i - (volumes.length - ends.length)]!.clearanceVolume;
    const density = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
    absolute[slots.mass(i)] = relative * density * volume;
    absolute[slots.energy(i)] = (relative * atmosphere.pressure * volume) / (gas.heatCapacityRatio - 1);
  }
  return { relative, absolute };
}

/** Whether the speed after each turn has stopped to grow. */
function stalled(speeds: readonly number[]): boolean {
  const before = speeds.at(-1 - STALLED.turns);
  return before !== undefined && Math.abs(speeds.at(-1)! / before - 1) < STALLED.gain;
}

export function odexSpinUp(system: EngineSystem, push: Push, settledSpeed: number, relative: number): SpinUp {
  const problem = {
    dimension: system.dimension,
    derivative: (_x: number, y: Float64Array, slopes: Float64Array) => {
      system.timeSlopes(1, y, slopes);
    },
  };
  const integrator = odexIntegrator(problem, tolerancesOf(system, relative));
  const y = initialState(system, push.angle, push.speed);
  const speeds: number[] = [];
  let stop = FULL_TURN * (Math.floor(push.angle / FULL_TURN) + 1);
  let before = NaN;
  let near = 0;
  const passesStop: EventFunction = { value: (_x, component) => stop - component(SLOT.crankAngle) };
  const comesToRest: EventFunction = { value: (_x, component) => component(SLOT.speed) };
  while (near < 2 && speeds.length < MOST_TURNS && !stalled(speeds)) {
    const time = y[SLOT.time]!;
    const journey = { events: [passesStop, comesToRest], stepLimit: MOST_STEPS };
    const arrival = integrator.advance(time, y, time + 100, journey);
    if (arrival.reason !== 'event' || arrival.event !== 0) break;
    speeds.push(FULL_TURN / (y[SLOT.time]! - before));
    before = y[SLOT.time]!;
    stop += FULL_TURN;
    near = Math.abs(speeds.at(-1)! / settledSpeed - 1) < SETTLED_WITHIN ? near + 1 : 0;
  }
  return {
    settled: near === 2,
    speed: speeds.at(-1) ?? NaN,
    derivativeCalls: integrator.counters.derivativeCalls,
    turns: speeds.length,
  };
}

/** The loosest tolerance with which it settles where it should; none when it never does. */
export function loosestOdexTolerance(
  system: EngineSystem,
  push: Push,
  settledSpeed: number,
): number | undefined {
  return TOLERANCES.find((relative) => odexSpinUp(system, push, settledSpeed, relative).settled);
}
