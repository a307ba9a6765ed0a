/** How closely each unknown of an engine is followed, given a relative tolerance. */
import { square } from '../numerics/elementary/whole-powers.ts';
import type { Tolerances } from '../numerics/integrator.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';

/** Speeds that far below running are told apart no further [rad/s]. */
const SLOW_SPEED = 0.1;

/**
 * Absolute tolerances: a share of room air in the smallest each volume gets, by default as large a share as the relative
 * one; the ledgers do not steer.
 */
export function tolerances(
  { engine, slots, dimension }: EngineSystem,
  relative: number,
  ofAir = relative,
): Tolerances {
  const { gas, atmosphere } = engine;
  const massPerVolume = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
  const energyPerVolume = atmosphere.pressure / (gas.heatCapacityRatio - 1);
  const scale = new Float64Array(dimension).fill(Infinity);
  scale[SLOT.crankAngle] = 1e-2;
  scale[SLOT.time] = 1e-2;
  scale[SLOT.speed] = SLOW_SPEED;
  const firstEnd = engine.volumes.length - engine.ends.length;
  for (const [i, { fixedVolume }] of engine.volumes.entries()) {
    const volume = fixedVolume ?? engine.ends[i - firstEnd]!.clearanceVolume;
    scale[slots.mass(i)] = massPerVolume * volume;
    scale[slots.energy(i)] = energyPerVolume * volume;
  }
  const absolute = scale.map((value, i) => (i < slots.mass(0) ? relative : ofAir) * value);
  return { relative, absolute };
}

/** The same for a state that holds the kinetic energy. */
export function turningTolerances(system: EngineSystem, relative: number): Tolerances {
  const { absolute } = tolerances(system, relative);
  absolute[SLOT.speed] = relative * 0.5 * system.engine.flywheel.momentOfInertia * square(SLOW_SPEED);
  return { relative, absolute };
}
