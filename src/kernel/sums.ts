/**
 * Volumes and ledgers add up: what goes through passages, over pistons and into friction, as parts of the slopes. All sums
 * are linear in what they add, so that they serve for changes of flows as well as for flows.
 *
 * `timeRate` is dt/dx and `angleRate` dθ/dx of whatever variable x the slopes are against.
 */
import * as engine from './engine-seat.ts';
import { FIRST_VOLUME } from './flows.ts';
import { BEARING_TORQUE, GEAR_TORQUE, GRAVITY_TORQUE, LOAD_TORQUE, PISTON_TORQUE } from './header.ts';
import { ATMOSPHERE } from './mechanics.ts';
import { at, intAt, put, type Index } from './memory.ts';
import {
  BEARING_WORK,
  ENTHALPY_IN,
  FIRST_MASS,
  FIRST_PASSAGE,
  GAS_WORK,
  GEAR_WORK,
  GRAVITY_WORK,
  LOAD_WORK,
  PISTON_WORK,
  ROOM_WORK,
  TOTAL_WALL_HEAT,
} from './state-slots.ts';
import { addWaste } from './waste.ts';

/** Where the totals begin in a state. */
export function firstTotal(): Index {
  return FIRST_MASS + 2 * engine.volumes;
}

export function add(array: Index, slot: Index, value: number): void {
  put(array, slot, at(array, slot) + value);
}

/** Mass [kg/s] and enthalpy [W] through every passage. */
export function addFlows(massFlow: Index, enthalpyFlow: Index, timeRate: number, slopes: Index): void {
  const passages = engine.passages;
  for (let i = 0; i < passages; i += 1)
    addThrough(i, at(massFlow, i) * timeRate, at(enthalpyFlow, i) * timeRate, slopes);
}

/** Mass and enthalpy through one passage, per unit of x. */
export function addThrough(i: Index, mass: number, enthalpy: number, slopes: Index): void {
  const source = intAt(engine.source, i);
  const sink = intAt(engine.sink, i);
  const total = engine.totals !== 0;
  const totals = slopes + firstTotal();
  if (source >= 0) {
    add(slopes, source, -mass);
    add(slopes, source + 1, -enthalpy);
  } else if (total) add(totals, ENTHALPY_IN, enthalpy);
  if (sink >= 0) {
    add(slopes, sink, mass);
    add(slopes, sink + 1, enthalpy);
  } else if (total) add(totals, ENTHALPY_IN, -enthalpy);
  if (total) add(totals, FIRST_PASSAGE + i, mass);
}

/** Work of the gas on the pistons and of the pistons on the room, heat of the walls, wasted air. */
export function addEnds(timeRate: number, angleRate: number, slopes: Index): void {
  const pressure = engine.pressure;
  const firstEnd = engine.firstEnd;
  const ends = engine.ends;
  const volumeRate = engine.volumeRate;
  const wallHeat = engine.wallHeat;
  const massFlow = engine.massFlow;
  const room = at(pressure, ATMOSPHERE);
  const firstPressure = pressure + FIRST_VOLUME + firstEnd;
  const firstEnergy = FIRST_MASS + 2 * firstEnd + 1;
  const totals = slopes + firstTotal();
  for (let i = 0; i < ends; i += 1) {
    const rate = at(volumeRate, i);
    const heat = at(wallHeat, i) * timeRate;
    const work = at(firstPressure, i) * rate * angleRate;
    add(slopes, firstEnergy + 2 * i, heat - work);
    if (engine.totals === 0) continue;
    add(totals, GAS_WORK, work);
    add(totals, ROOM_WORK, room * rate * angleRate);
    add(totals, TOTAL_WALL_HEAT, heat);
  }
  if (engine.totals !== 0) addWaste(massFlow, timeRate, slopes);
}

/** Works that resist, along a path dθ ≥ 0, and that of gravity. */
export function setWorks(pathRate: number, angleRate: number, slopes: Index): void {
  if (engine.totals === 0) return;
  const instant = engine.instant;
  const totals = slopes + firstTotal();
  put(totals, BEARING_WORK, at(instant, BEARING_TORQUE) * pathRate);
  put(totals, PISTON_WORK, at(instant, PISTON_TORQUE) * pathRate);
  put(totals, GEAR_WORK, at(instant, GEAR_TORQUE) * pathRate);
  put(totals, LOAD_WORK, at(instant, LOAD_TORQUE) * pathRate);
  put(totals, GRAVITY_WORK, at(instant, GRAVITY_TORQUE) * angleRate);
}
