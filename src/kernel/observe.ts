/**
 * From a state to the instant it stands for: pressures and temperatures first, then torques, then each passage's flow once.
 *
 *   p = (γ−1) U/V,  T = U/(m cv)
 */
import * as engine from './engine-seat.ts';
import { areDonorsStale, FIRST_VOLUME, setFlows } from './flows.ts';
import { GAS_CONSTANT, HEAT_CAPACITY_AT_CONSTANT_VOLUME, MOMENT_OF_INERTIA } from './header.ts';
import { setPosition, setTorques } from './mechanics.ts';
import { at, put, type Index } from './memory.ts';
import { setOpenings } from './openings.ts';
import { CRANK_ANGLE, FIRST_MASS, SPEED } from './state-slots.ts';
import { wallHeatOf } from './wall-heat.ts';

/**
 * Trial states of an integrator may leave the physical range; the laws are then evaluated at its border [kg/m³, K, rad/s].
 * A run whose accepted state is out there ends.
 */
const LEAST_DENSITY = 1e-4;
const LEAST_TEMPERATURE: number = 20;
const MOST_TEMPERATURE: number = 3000;
const LEAST_SPEED = 1e-3;

/** Volume [m³] and mass [kg] that the laws were given, of a volume by its number. */
export function volumeOf(i: Index): number {
  const firstEnd = engine.firstEnd;
  return i < firstEnd ? at(engine.fixedVolume, i) : at(engine.endVolume, i - firstEnd);
}

export function massOf(y: Index, i: Index): number {
  return Math.max(at(y, FIRST_MASS + 2 * i), LEAST_DENSITY * volumeOf(i));
}

function setGas(y: Index): void {
  const numbers = engine.numbers;
  const volumes = engine.volumes;
  const temperature = engine.temperature;
  const pressure = engine.pressure;
  const gasConstant = at(numbers, GAS_CONSTANT);
  const cv = at(numbers, HEAT_CAPACITY_AT_CONSTANT_VOLUME);
  for (let i = 0; i < volumes; i += 1) {
    const v = volumeOf(i);
    const m = Math.max(at(y, FIRST_MASS + 2 * i), LEAST_DENSITY * v);
    const t = at(y, FIRST_MASS + 2 * i + 1) / (m * cv);
    const bounded = Math.min(MOST_TEMPERATURE, Math.max(LEAST_TEMPERATURE, t));
    put(temperature, FIRST_VOLUME + i, bounded);
    put(pressure, FIRST_VOLUME + i, (gasConstant * m * bounded) / v);
  }
}

/** All but the position, which must be set. */
function feel(angle: number, y: Index, speed: number): void {
  const firstEnd = engine.firstEnd;
  const ends = engine.ends;
  const temperature = engine.temperature;
  const pressure = engine.pressure;
  const wallHeat = engine.wallHeat;
  setGas(y);
  setTorques(angle, speed);
  setOpenings(angle, Math.abs(speed));
  setFlows();
  const place = FIRST_VOLUME + firstEnd;
  for (let i = 0; i < ends; i += 1) {
    const heat = wallHeatOf(i, at(temperature, place + i), at(pressure, place + i), Math.abs(speed));
    put(wallHeat, i, heat);
  }
}

/** Looks at a state that holds the speed. */
export function look(y: Index): void {
  const angle = at(y, CRANK_ANGLE);
  setPosition(angle);
  feel(angle, y, at(y, SPEED));
}

/** Looks at pressures and torques alone, of a state as if its crank stood still; all flows stay as they were. */
export function lookAtRest(y: Index): void {
  const angle = at(y, CRANK_ANGLE);
  setPosition(angle);
  setGas(y);
  setTorques(angle, 0);
}

/** Looks at a state that holds the kinetic energy of an engine that turns forward; its speed [rad/s]. */
export function lookTurning(angle: number, y: Index): number {
  setPosition(angle);
  const square = (2 * at(y, SPEED)) / at(engine.instant, MOMENT_OF_INERTIA);
  const speed = square > LEAST_SPEED * LEAST_SPEED ? Math.sqrt(square) : LEAST_SPEED;
  feel(angle, y, speed);
  return speed;
}

/** Whether the air of any passage comes from elsewhere than the donors kept, at a state of either kind. */
export function areStale(angle: number, y: Index): boolean {
  setPosition(angle);
  setGas(y);
  return areDonorsStale();
}
