/**
 * The equations of motion as slopes of a state, against time and against the crank angle; src/model/system.ts has them
 * in formulas.
 */
import { clear } from './clear.ts';
import * as engine from './engine-seat.ts';
import {
  BEARING_TORQUE,
  GAS_TORQUE,
  GEAR_TORQUE,
  GRAVITY_TORQUE,
  INERTIA_TORQUE,
  LOAD_TORQUE,
  MOMENT_OF_INERTIA,
  PISTON_TORQUE,
} from './header.ts';
import { at, put, type Index } from './memory.ts';
import { look, lookTurning } from './observe.ts';
import { CRANK_ANGLE, SPEED, TIME } from './state-slots.ts';
import { addEnds, addFlows, setWorks } from './sums.ts';

function resisting(): number {
  const instant = engine.instant;
  return (
    at(instant, BEARING_TORQUE) +
    at(instant, PISTON_TORQUE) +
    at(instant, GEAR_TORQUE) +
    at(instant, LOAD_TORQUE)
  );
}

/** Per second, of a state that holds the speed; `direction` is +1, −1, or 0 at rest. */
export function timeSlopes(direction: number, y: Index, slopes: Index): void {
  const instant = engine.instant;
  look(y);
  const speed = at(y, SPEED);
  clear(slopes, engine.dimension);
  put(slopes, TIME, 1);
  addFlows(engine.massFlow, engine.enthalpyFlow, 1, slopes);
  addEnds(1, speed, slopes);
  if (direction === 0) return;
  const driving = at(instant, GAS_TORQUE) + at(instant, INERTIA_TORQUE) + at(instant, GRAVITY_TORQUE);
  put(slopes, CRANK_ANGLE, speed);
  put(slopes, SPEED, (driving - direction * resisting()) / at(instant, MOMENT_OF_INERTIA));
  setWorks(direction * speed, speed, slopes);
}

/** Per radian, at a crank angle, of a state that holds the kinetic energy. */
export function angleSlopes(angle: number, y: Index, slopes: Index): void {
  const instant = engine.instant;
  const perRadian = 1 / lookTurning(angle, y);
  clear(slopes, engine.dimension);
  put(slopes, CRANK_ANGLE, 1);
  put(slopes, TIME, perRadian);
  put(slopes, SPEED, at(instant, GAS_TORQUE) + at(instant, GRAVITY_TORQUE) - resisting());
  addFlows(engine.massFlow, engine.enthalpyFlow, perRadian, slopes);
  addEnds(perRadian, 1, slopes);
  setWorks(1, 1, slopes);
}
