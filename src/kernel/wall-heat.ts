/** Heat from the walls of the cylinder to its gas; the laws are those of src/parts/wall-heat. */
import * as engine from './engine-seat.ts';
import { viscosityAt } from './gas-laws.ts';
import {
  GAS_CONSTANT,
  WALL_COEFFICIENT,
  WALL_CORRELATED,
  WALL_CRANK_RADIUS,
  WALL_LAW,
  WALL_LENGTH,
  WALL_STEADY,
  WALL_TEMPERATURE,
} from './header.ts';
import { EXCHANGE } from './fixed-places.ts';
import { hostWallHeat } from './host.ts';
import { at, put, type Index } from './memory.ts';
import { isTabulated, powerOfFourFifths } from './tables.ts';

const PI = 3.141_592_653_589_793;

/** [W] from the wall of a cylinder end, by its number, at a temperature, a pressure and a crank speed ≥ 0. */
export function wallHeatOf(i: Index, t: number, p: number, speed: number): number {
  const numbers = engine.numbers;
  const law = at(numbers, WALL_LAW);
  const area = at(engine.coverArea, i) + at(engine.barrelPerVolume, i) * at(engine.endVolume, i);
  const warmer = at(numbers, WALL_TEMPERATURE) - t;
  if (law === WALL_STEADY) return at(numbers, WALL_COEFFICIENT) * area * warmer;
  if (law === WALL_CORRELATED) {
    const viscosity = viscosityAt(t);
    const density = p / (at(numbers, GAS_CONSTANT) * t);
    const pistonSpeed = (2 * at(numbers, WALL_CRANK_RADIUS) * speed) / PI;
    const reynolds = (density * pistonSpeed * at(numbers, WALL_LENGTH)) / viscosity;
    if (isTabulated(reynolds))
      return at(numbers, WALL_COEFFICIENT) * viscosity * powerOfFourFifths(reynolds) * area * warmer;
  }
  put(EXCHANGE, 0, area);
  put(EXCHANGE, 1, t);
  put(EXCHANGE, 2, p);
  put(EXCHANGE, 3, speed);
  hostWallHeat();
  return at(EXCHANGE, 0);
}
