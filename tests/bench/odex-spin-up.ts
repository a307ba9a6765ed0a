/**
 * The comparison: an engine spun up from a push with the extrapolation method in time, turn after turn, until two
 * successive turns are within 0.1 % of the settled speed. It is told that speed, so that knowing when to stop costs nothing.
 */
import type { EngineSystem } from '../../src/model/system.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EventFunction, Tolerances } from '../../src/numerics/integrator.ts';
import { odexIntegrator } from '../../src/numerics/odex-integrator.ts';

const FULL_TURN = 2 * Math.PI;
const MOST_STEPS = 1e7;

/** How near a turn has to come to the settled speed, as a share of it. */
export const SETTLED_WITHIN = 1e-3;

export interface Push {
  /** [rad], [rad/s]. */
  readonly angle: number;
  readonly speed: number;
}

export interface SpinUp {
  /** Mean speed [rad/s] of the last turn. */
  readonly speed: number;
  readonly settled: boolean;
  readonly derivativeCalls: number;
  readonly turns: number;
}

/** Room air in the smallest each volume gets counts as its size; the totals do not steer. */
export function tolerancesOf({ engine, slots, dimension }: EngineSystem, relative: number): Tolerances {
  const { gas, atmosphere, volumes, ends } = engine;
  const absolute = new Float64Array(dimension).fill(Infinity);
  absolute[SLOT.crankAngle] = 1e-2 * relative;
  absolute[SLOT.time] = 1e-2 * relative;
  absolute[SLOT.speed] = 1e-1 * relative;
  for (const [i, { fixedVolume }] of volumes.entries()) {
    const volume = fixedVolume ?? ends[i - (volumes.length - ends.length)]!.clearanceVolume;
    const density = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
    absolute[slots.mass(i)] = relative * density * volume;
    absolute[slots.energy(i)] = (relative * atmosphere.pressure * volume) / (gas.heatCapacityRatio - 1);
  }
  return { relative, absolute };
}

export function odexSpinUp(
  system: EngineSystem,
  push: Push,
  relative: number,
  settledSpeed: number,
  mostTurns: number,
): SpinUp {
  const problem = {
    dimension: system.dimension,
    derivative: (_x: number, y: Float64Array, slopes: Float64Array) => system.timeSlopes(1, y, slopes),
  };
  const integrator = odexIntegrator(problem, tolerancesOf(system, relative));
  const y = initialState(system, push.angle, push.speed);
  let speed = NaN;
  let near = 0;
  let turns = 0;
  let stop = FULL_TURN * Math.ceil(push.angle / FULL_TURN);
  const passesStop: EventFunction = { value: (_x, component) => stop - component(SLOT.crankAngle) };
  const comesToRest: EventFunction = { value: (_x, component) => component(SLOT.speed) };
  const events = [passesStop, comesToRest];
  for (let before = NaN; turns < mostTurns && near < 2; turns += 1) {
    const time = y[SLOT.time]!;
    const arrival = integrator.advance(time, y, time + 100, { events, stepLimit: MOST_STEPS });
    if (arrival.reason !== 'event' || arrival.event !== 0) break;
    speed = FULL_TURN / (y[SLOT.time]! - before);
    before = y[SLOT.time]!;
    stop += FULL_TURN;
    near = Math.abs(speed / settledSpeed - 1) < SETTLED_WITHIN ? near + 1 : 0;
  }
  return { speed, settled: near === 2, derivativeCalls: integrator.counters.derivativeCalls, turns };
}
