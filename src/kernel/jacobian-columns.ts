/** The columns of the Jacobian of an engine: mass and energy of each volume, and the kinetic energy. */
import { clear } from './clear.ts';
import * as engine from './engine-seat.ts';
import { beginFlowChanges, writeFlowChanges, writeSpeedChanges } from './flow-changes.ts';
import { SHARE } from './flow-slopes.ts';
import { FIRST_VOLUME } from './flows.ts';
import {
  BEARING_TORQUE,
  GAS_TORQUE,
  GEAR_TORQUE,
  HEAT_CAPACITY_AT_CONSTANT_VOLUME,
  HEAT_CAPACITY_RATIO,
  LOAD_TORQUE,
  MOMENT_OF_INERTIA,
  PISTON_TORQUE,
} from './header.ts';
import * as rates from './jacobian-rates.ts';
import { setGearTorque, setPressureTorques, setSpeedTorques } from './mechanics.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { massOf, volumeOf } from './observe.ts';
import {
  BEARING_WORK,
  FIRST_MASS,
  GAS_WORK,
  GEAR_WORK,
  LOAD_WORK,
  PISTON_WORK,
  SPEED,
  TIME,
  TOTAL_WALL_HEAT,
} from './state-slots.ts';
import { add, addFlows, addThrough, firstTotal } from './sums.ts';
import { wallHeatOf } from './wall-heat.ts';
import { addWaste, wasteToChange } from './waste.ts';

function keepColumn(k: Index, width: Index, jacobian: Index): void {
  for (let i = 0, entry = jacobian + k; i < engine.dimension; i += 1, entry += width)
    put(entry, 0, at(engine.column, i));
}

/** Of an end, by its number. */
function addWallChange(end: Index, change: number): void {
  add(engine.column, FIRST_MASS + 2 * (engine.firstEnd + end) + 1, change);
  if (engine.totals !== 0) add(engine.column, firstTotal() + TOTAL_WALL_HEAT, change);
}

/** Column k, of the kinetic energy against the crank angle, at the instant last observed. */
export function writeEnergyColumn(k: Index, width: Index, angle: number, jacobian: Index): void {
  const column = engine.column;
  const speed = rates.speed;
  // E = ½ J ω², so dω/dE = 1/(J ω), and what goes by the time goes by 1/ω.
  const perEnergy = 1 / (at(engine.instant, MOMENT_OF_INERTIA) * speed);
  const timeChange = -perEnergy / (speed * speed);
  clear(column, engine.dimension);
  put(column, TIME, timeChange);
  addFlows(engine.massFlow, engine.enthalpyFlow, timeChange, column);
  if (engine.totals !== 0) addWaste(engine.massFlow, timeChange, column);
  writeSpeedChanges(angle, speed);
  addFlows(engine.flowChange, engine.enthalpyChange, perEnergy / speed, column);
  for (let i = 0; i < engine.ends; i += 1) {
    const place = FIRST_VOLUME + engine.firstEnd + i;
    const heat = at(engine.wallHeat, i);
    const faster = speed * (1 + SHARE);
    const hotter = wallHeatOf(i, at(engine.temperature, place), at(engine.pressure, place), Math.abs(faster));
    addWallChange(i, heat * timeChange + ((hotter - heat) / (SHARE * speed * speed)) * perEnergy);
  }
  addResistance(angle, speed, perEnergy);
  keepColumn(k, width, jacobian);
}

function addResistance(angle: number, speed: number, perEnergy: number): void {
  const instant = engine.instant;
  setGearTorque(angle, speed * (1 + SHARE));
  setSpeedTorques(speed * (1 + SHARE));
  const per = perEnergy / (SHARE * speed);
  const bearing = (at(instant, BEARING_TORQUE) - rates.bearingTorque) * per;
  const gear = (at(instant, GEAR_TORQUE) - rates.gearTorque) * per;
  const load = (at(instant, LOAD_TORQUE) - rates.loadTorque) * per;
  put(engine.column, SPEED, -(bearing + gear + load));
  if (engine.totals === 0) return;
  const totals = engine.column + firstTotal();
  put(totals, BEARING_WORK, bearing);
  put(totals, GEAR_WORK, gear);
  put(totals, LOAD_WORK, load);
}

/** Columns k and following, of all mass and energy, at the instant last observed. */
export function writeGasColumns(
  k: Index,
  width: Index,
  angle: number,
  y: Index,
  slopes: Index,
  jacobian: Index,
): void {
  const cv = at(engine.numbers, HEAT_CAPACITY_AT_CONSTANT_VOLUME);
  beginFlowChanges(slopes);
  for (let v = 0; v < engine.volumes; v += 1) {
    const mass = massOf(y, v);
    const pressurePerEnergy = (at(engine.numbers, HEAT_CAPACITY_RATIO) - 1) / volumeOf(v);
    setGasColumn(v, mass, 0, -at(engine.temperature, FIRST_VOLUME + v) / mass, slopes);
    keepColumn(k + 2 * v, width, jacobian);
    setGasColumn(v, at(y, FIRST_MASS + 2 * v + 1), pressurePerEnergy, 1 / (mass * cv), slopes);
    addTorques(v, pressurePerEnergy, angle);
    keepColumn(k + 2 * v + 1, width, jacobian);
  }
}

/** With an unknown of that size, which moves pressure and temperature of a volume by so much per unit. */
function setGasColumn(
  volume: Index,
  size: number,
  pressureChange: number,
  temperatureChange: number,
  slopes: Index,
): void {
  clear(engine.column, engine.dimension);
  writeFlowChanges(volume, pressureChange, temperatureChange);
  for (let k = intAt(engine.firstOf, volume); k < intAt(engine.firstOf, volume + 1); k += 1) {
    const i = intAt(engine.passagesOf, k);
    const mass = at(engine.flowChange, i) * rates.timeRate;
    addThrough(i, mass, at(engine.enthalpyChange, i) * rates.timeRate, engine.column);
  }
  if (engine.totals !== 0) addWasteChange(slopes, size);
  if (volume >= engine.firstEnd) addWall(volume - engine.firstEnd, pressureChange, temperatureChange);
}

/** Wasted air is no plain sum of flows: its change by a difference, with an unknown of that size. */
function addWasteChange(slopes: Index, size: number): void {
  const step = SHARE * size;
  for (let i = 0; i < engine.passages; i += 1)
    put(engine.movedFlow, i, at(engine.massFlow, i) + step * at(engine.flowChange, i));
  addWaste(engine.movedFlow, rates.timeRate, engine.column);
  wasteToChange(engine.column, slopes, step);
}

function addWall(end: Index, pressureChange: number, temperatureChange: number): void {
  const place = FIRST_VOLUME + engine.firstEnd + end;
  const t = at(engine.temperature, place);
  const step = (SHARE * t) / Math.abs(temperatureChange);
  const p = at(engine.pressure, place) + step * pressureChange;
  const heat = wallHeatOf(end, t + step * temperatureChange, p, Math.abs(rates.speed));
  addWallChange(end, ((heat - at(engine.wallHeat, end)) / step) * rates.timeRate);
}

/** The pressure of a volume on pistons and valves. */
function addTorques(volume: Index, pressureChange: number, angle: number): void {
  const instant = engine.instant;
  const column = engine.column;
  const totals = column + firstTotal();
  const direction = rates.direction;
  const place = FIRST_VOLUME + volume;
  if (volume < engine.firstEnd && place !== engine.chest) return;
  const here = at(engine.pressure, place);
  const there = here + SHARE * here;
  const per = pressureChange / (there - here);
  put(engine.pressure, place, there);
  setPressureTorques(rates.speed);
  setGearTorque(angle, rates.speed);
  put(engine.pressure, place, here);
  const ofGas = (at(instant, GAS_TORQUE) - rates.gasTorque) * per;
  const ofPiston = (at(instant, PISTON_TORQUE) - rates.pistonTorque) * per;
  const ofGear = (at(instant, GEAR_TORQUE) - rates.gearTorque) * per;
  add(column, SPEED, (ofGas - direction * (ofPiston + ofGear)) * rates.perTorque);
  if (volume >= engine.firstEnd) {
    const work = pressureChange * at(engine.volumeRate, volume - engine.firstEnd) * rates.angleRate;
    add(column, FIRST_MASS + 2 * volume + 1, -work);
    if (engine.totals !== 0) add(totals, GAS_WORK, work);
  }
  if (engine.totals === 0) return;
  add(totals, PISTON_WORK, ofPiston * direction * rates.angleRate);
  add(totals, GEAR_WORK, ofGear * direction * rates.angleRate);
}
