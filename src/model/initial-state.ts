/** The engine as it stands before the air is turned on. */
import { SLOT } from './slots.ts';
import type { EngineSystem } from './system.ts';

/** Room air in every volume, crank at an angle [rad], turning at a speed [rad/s]; all ledgers at zero. */
export function initialState(system: EngineSystem, crankAngle: number, speed: number): Float64Array {
  const { engine, slots } = system;
  const { gas, atmosphere } = engine;
  const y = new Float64Array(system.dimension);
  y[SLOT.crankAngle] = crankAngle;
  y[SLOT.speed] = speed;
  const { endVolume } = system.observe(y);
  const firstEnd = engine.volumes.length - engine.ends.length;
  const density = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
  const energyDensity = atmosphere.pressure / (gas.heatCapacityRatio - 1);
  for (const [i, { fixedVolume }] of engine.volumes.entries()) {
    const volume = fixedVolume ?? endVolume[i - firstEnd]!;
    y[slots.mass(i)] = density * volume;
    y[slots.energy(i)] = energyDensity * volume;
  }
  return y;
}
