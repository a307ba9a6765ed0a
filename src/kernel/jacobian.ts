/**
 * ∂slope/∂unknown of the equations of motion, column by column.
 *
 * Crank angle, and speed against time, by differences of whole derivatives. Mass and energy of a volume from the few flows,
 * torques and wall heats that know of it, the kinetic energy from what knows of the speed, put together by the same sums
 * as the slopes: what leaves one place enters the next in the Jacobian too, and with it every linear sum that an implicit
 * step keeps.
 *
 * The columns against the angle are energy, then mass and energy of each volume; against time, angle and speed come first.
 * A Jacobian stands row by row, a row for each slope.
 */
import * as engine from './engine-seat.ts';
import { SHARE } from './flow-slopes.ts';
import { MOMENT_OF_INERTIA } from './header.ts';
import { writeEnergyColumn, writeGasColumns } from './jacobian-columns.ts';
import { beginColumns, setRates } from './jacobian-rates.ts';
import { at, put, type Index } from './memory.ts';
import { angleSlopes, timeSlopes } from './slopes.ts';
import { CRANK_ANGLE, SPEED, TIME } from './state-slots.ts';

/** Column k against time by a difference, the way the unknown, of the same number, is going. */
function writeDifference(k: Index, direction: number, y: Index, slopes: Index, jacobian: Index): void {
  const width = 2 + 2 * engine.volumes;
  const moved = engine.moved;
  const here = at(y, k === 0 ? CRANK_ANGLE : SPEED);
  const slot = k === 0 ? CRANK_ANGLE : SPEED;
  for (let i = 0; i < engine.dimension; i += 1) put(moved, i, at(y, i));
  const share = at(slopes, slot) < 0 ? -SHARE : SHARE;
  const there = here + share * Math.max(1, Math.abs(here));
  put(moved, slot, there);
  timeSlopes(direction, moved, engine.movedSlopes);
  for (let i = 0, row = jacobian + k; i < engine.dimension; i += 1, row += width)
    put(row, 0, (at(engine.movedSlopes, i) - at(slopes, i)) / (there - here));
}

/** At the state for which slopes were last asked for, and those. */
export function timeJacobian(direction: number, y: Index, slopes: Index, jacobian: Index): void {
  const speed = at(y, SPEED);
  const width = 2 + 2 * engine.volumes;
  setRates(speed, 1, speed, direction, direction === 0 ? 0 : 1 / at(engine.instant, MOMENT_OF_INERTIA));
  beginColumns();
  writeGasColumns(2, width, at(y, CRANK_ANGLE), y, slopes, jacobian);
  for (let k = 0; k < 2; k += 1) writeDifference(k, direction, y, slopes, jacobian);
}

/** The same against the crank angle. */
export function angleJacobian(angle: number, y: Index, slopes: Index, jacobian: Index): void {
  const perRadian = at(slopes, TIME);
  const width = 1 + 2 * engine.volumes;
  setRates(1 / perRadian, perRadian, 1, 1, 1);
  beginColumns();
  writeGasColumns(1, width, angle, y, slopes, jacobian);
  writeEnergyColumn(0, width, angle, jacobian);
}

/** ∂slope/∂angle, likewise. */
export function angleDrift(angle: number, y: Index, slopes: Index, drift: Index): void {
  const ahead = angle + SHARE * Math.max(1, Math.abs(angle));
  angleSlopes(ahead, y, engine.movedSlopes);
  for (let i = 0; i < engine.dimension; i += 1)
    put(drift, i, (at(engine.movedSlopes, i) - at(slopes, i)) / (ahead - angle));
}
