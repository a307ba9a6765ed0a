/** The single numbers of an engine, in the order of src/kernel/header.ts. */
import * as header from '../kernel/header.ts';
import type { Image } from '../numerics/image.ts';
import type { WallHeat } from '../parts/wall-heat/wall-heat.ts';
import type { Engine } from './engine.ts';

const GRAVITY = 9.80665;

/** +1 when going outwards is going down. */
const outwardIsDown = { horizontal: 0, upright: 1, inverted: -1 } as const;

/** In their order. */
function wallNumbers({ law }: WallHeat): readonly number[] {
  if (law === undefined) return [header.WALL_OF_HOST];
  if (law.kind === 'steady') return [header.WALL_STEADY, law.wallTemperature, law.coefficient];
  return [header.WALL_CORRELATED, law.wallTemperature, law.factor, law.length, law.crankRadius];
}

/** Writes them; the offset of the first. */
export function writeEngineNumbers(engine: Engine, image: Image): number {
  const { gas, crank, friction, cylinder, load, wallHeat } = engine;
  const { low, perCell, nodes } = gas.densityRatio;
  const numbers = new Float64Array(header.DENSITY_NODES);
  numbers[header.GAS_CONSTANT] = gas.specificGasConstant;
  numbers[header.HEAT_CAPACITY_AT_CONSTANT_PRESSURE] = gas.heatCapacityAtConstantPressure;
  numbers[header.HEAT_CAPACITY_AT_CONSTANT_VOLUME] = gas.heatCapacityAtConstantVolume;
  numbers[header.HEAT_CAPACITY_RATIO] = gas.heatCapacityRatio;
  numbers[header.SUTHERLAND_FACTOR] = gas.viscosity.factor;
  numbers[header.SUTHERLAND_CONSTANT] = gas.viscosity.constant;
  numbers[header.CRITICAL_PRESSURE_RATIO] = gas.criticalPressureRatio;
  numbers[header.NOZZLE_FACTOR] = gas.nozzleFactor;
  numbers[header.EQUAL_PRESSURE_ROUNDING] = gas.equalPressureRounding;
  numbers[header.DENSITY_TABLE_LOW] = low;
  numbers[header.DENSITY_TABLE_PER_CELL] = perCell;
  numbers[header.CRANK_RADIUS] = crank.oscillating?.crankRadius ?? crank.crankRadius;
  numbers[header.ROD_LENGTH] = crank.rodLength;
  numbers[header.TRUNNION_DISTANCE] = crank.oscillating?.trunnionDistance ?? 0;
  numbers[header.FLYWHEEL_MOMENT] = engine.flywheel.momentOfInertia;
  numbers[header.RECIPROCATING_MASS] = cylinder.reciprocating_mass;
  numbers[header.WEIGHT_OUTWARDS] = cylinder.reciprocating_mass * GRAVITY * outwardIsDown[cylinder.attitude];
  numbers[header.RUNNING_TORQUE] = friction.running_torque;
  numbers[header.BREAKAWAY_TORQUE] = friction.breakaway_torque;
  numbers[header.STRIBECK_SPEED] = friction.stribeck_speed;
  numbers[header.VISCOUS_TORQUE] = friction.viscous_torque;
  numbers[header.PISTON_FORCE] = friction.piston_force;
  numbers[header.PISTON_FORCE_PER_PRESSURE] = friction.piston_force_per_pressure;
  numbers[header.GLAND_FORCE] = friction.gland_force;
  numbers[header.GLAND_FORCE_PER_PRESSURE] = friction.gland_force_per_pressure;
  numbers.set(load.quadratic ?? [NaN, 0, 0], header.LOAD_CONSTANT);
  numbers.set(wallNumbers(wallHeat), header.WALL_LAW);
  const first = image.numbers(numbers);
  image.numbers(nodes);
  return first;
}
