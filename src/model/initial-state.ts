/** The engine as it stands before the air is turned on. */
import { pistonTravel } from '../parts/crank-train.ts';
import type { Engine } from './engine.ts';
import { dimension, SLOT } from './slots.ts';

/** Room air in chest and cylinder, crank at an angle [rad], turning at a speed [rad/s]; all ledgers at zero. */
export function initialState(engine: Engine, crankAngle: number, speed: number): Float64Array {
  const y = new Float64Array(dimension(engine.passages.length));
  const { gas, atmosphere } = engine;
  const travel = pistonTravel(engine.crank, Math.sin(crankAngle), Math.cos(crankAngle));
  const volume = engine.clearanceVolume + engine.pistonArea * travel;
  y[SLOT.crankAngle] = crankAngle;
  y[SLOT.speed] = speed;
  const density = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
  const energyDensity = atmosphere.pressure / (gas.heatCapacityRatio - 1);
  y[SLOT.chestMass] = density * engine.chestVolume;
  y[SLOT.chestEnergy] = energyDensity * engine.chestVolume;
  y[SLOT.cylinderMass] = density * volume;
  y[SLOT.cylinderEnergy] = energyDensity * volume;
  return y;
}
