/**
 * Pistons, crank and everything that resists them, for all cylinders on the shaft: the mechanical half of an instant, and
 * the volume of each cylinder end, from crank angle and speed.
 */
import { pistonTravel, pistonTravelCurvature, pistonTravelRate, reach } from './crank.ts';
import * as engine from './engine-seat.ts';
import { FIRST_VOLUME } from './flows.ts';
import {
  BEARING_TORQUE,
  BREAKAWAY_TORQUE,
  FLYWHEEL_MOMENT,
  GAS_TORQUE,
  GEAR_TORQUE,
  GLAND_FORCE,
  GLAND_FORCE_PER_PRESSURE,
  GRAVITY_TORQUE,
  INERTIA_TORQUE,
  LOAD_CONSTANT,
  LOAD_PER_SPEED,
  LOAD_PER_SQUARE,
  LOAD_TORQUE,
  MOMENT_OF_INERTIA,
  PISTON_FORCE,
  PISTON_FORCE_PER_PRESSURE,
  PISTON_TORQUE,
  POSITION_ANGLE,
  RECIPROCATING_MASS,
  RUNNING_TORQUE,
  STRIBECK_SPEED,
  VISCOUS_TORQUE,
  WEIGHT_OUTWARDS,
} from './header.ts';
import { EXCHANGE } from './fixed-places.ts';
import { hostDrag, hostLoad } from './host.ts';
import { at, put, type Index } from './memory.ts';
import { exponential, setSineCosine } from './tables.ts';

export const ATMOSPHERE: Index = 1;

/** exp(−6.5²) is 5e-19: beyond, less is left than the last digit of the running torque. */
const SPEEDS_TO_NOTHING = 6.5;

/** What goes with the crank angle [rad] alone: volumes of all ends, their rates, and the moment of inertia. */
export function setPosition(angle: number): void {
  const memory = engine.memory;
  const numbers = engine.numbers;
  const cylinders = engine.cylinders;
  const offsets = engine.offsets;
  const sines = engine.sines;
  const cosines = engine.cosines;
  const reaches = engine.reaches;
  const levers = engine.levers;
  const travelArea = engine.travelArea;
  const endVolume = engine.endVolume;
  const deadVolume = engine.deadVolume;
  const volumeRate = engine.volumeRate;
  const instant = engine.instant;
  if (angle === at(memory, POSITION_ANGLE)) return;
  put(memory, POSITION_ANGLE, angle);
  const perCylinder = engine.endsPerCylinder;
  const mass = at(numbers, RECIPROCATING_MASS);
  let moment = at(numbers, FLYWHEEL_MOMENT);
  for (let k = 0; k < cylinders; k += 1) {
    setSineCosine(angle - at(offsets, k), sines + k, cosines + k);
    const sine = at(sines, k);
    const cosine = at(cosines, k);
    const reached = reach(sine, cosine);
    const travel = pistonTravel(cosine, reached);
    const lever = pistonTravelRate(sine, cosine, reached);
    put(reaches, k, reached);
    put(levers, k, lever);
    moment += mass * lever * lever;
    for (let i = k * perCylinder; i < (k + 1) * perCylinder; i += 1) {
      const area = at(travelArea, i);
      put(endVolume, i, at(deadVolume, i) + area * travel);
      put(volumeRate, i, area * lever);
    }
  }
  put(instant, MOMENT_OF_INERTIA, moment);
}

function bearingTorque(speed: number): number {
  const numbers = engine.numbers;
  const running = at(numbers, RUNNING_TORQUE);
  const share = speed / at(numbers, STRIBECK_SPEED);
  const boundary = share > SPEEDS_TO_NOTHING ? 0 : exponential(-share * share);
  return running + (at(numbers, BREAKAWAY_TORQUE) - running) * boundary + at(numbers, VISCOUS_TORQUE) * speed;
}

function loadTorque(speed: number): number {
  const numbers = engine.numbers;
  const constant = at(numbers, LOAD_CONSTANT);
  if (constant !== constant) {
    put(EXCHANGE, 0, speed);
    hostLoad();
    return at(EXCHANGE, 0);
  }
  return constant + at(numbers, LOAD_PER_SPEED) * speed + at(numbers, LOAD_PER_SQUARE) * speed * speed;
}

function dragTorque(k: Index, angle: number, speed: number, cylinder: number, otherEnd: number): number {
  const steady = at(engine.steadyDrag, k);
  if (steady === steady) return steady;
  put(EXCHANGE, 0, angle - at(engine.offsets, k));
  put(EXCHANGE, 1, speed);
  put(EXCHANGE, 2, at(engine.pressure, engine.chest));
  put(EXCHANGE, 3, cylinder);
  put(EXCHANGE, 4, otherEnd);
  hostDrag(k);
  return at(EXCHANGE, 0);
}

/** Torques at the position last set; pressures must be set. */
export function setTorques(angle: number, speed: number): void {
  setPressureTorques(speed);
  setGearTorque(angle, speed);
  setSpeedTorques(speed);
}

/** Those of gas, moving masses, gravity and the pistons' friction. */
export function setPressureTorques(speed: number): void {
  const pressure = engine.pressure;
  const firstEnd = engine.firstEnd;
  const ends = engine.ends;
  const volumeRate = engine.volumeRate;
  const cylinders = engine.cylinders;
  const levers = engine.levers;
  const sines = engine.sines;
  const cosines = engine.cosines;
  const reaches = engine.reaches;
  const numbers = engine.numbers;
  const instant = engine.instant;
  const perCylinder = engine.endsPerCylinder;
  const endPressure = pressure + FIRST_VOLUME + firstEnd;
  const room = at(pressure, ATMOSPHERE);
  const mass = at(numbers, RECIPROCATING_MASS);
  let gas: number = 0;
  let inertia: number = 0;
  let gravity: number = 0;
  let piston: number = 0;
  for (let i = 0; i < ends; i += 1) gas += (at(endPressure, i) - room) * at(volumeRate, i);
  for (let k = 0; k < cylinders; k += 1) {
    const lever = at(levers, k);
    const cover = at(endPressure, k * perCylinder);
    const behind = perCylinder === 2 ? at(endPressure, k * 2 + 1) : room;
    let force = at(numbers, PISTON_FORCE) + at(numbers, PISTON_FORCE_PER_PRESSURE) * Math.abs(cover - behind);
    if (perCylinder === 2)
      force += at(numbers, GLAND_FORCE) + at(numbers, GLAND_FORCE_PER_PRESSURE) * Math.abs(behind - room);
    piston += force * Math.abs(lever);
    gravity += at(numbers, WEIGHT_OUTWARDS) * lever;
    if (mass === 0) continue;
    const curvature = pistonTravelCurvature(at(sines, k), at(cosines, k), at(reaches, k));
    inertia -= mass * lever * curvature * speed * speed;
  }
  put(instant, GAS_TORQUE, gas);
  put(instant, INERTIA_TORQUE, inertia);
  put(instant, GRAVITY_TORQUE, gravity);
  put(instant, PISTON_TORQUE, piston);
}

export function setGearTorque(angle: number, speed: number): void {
  const pressure = engine.pressure;
  const firstEnd = engine.firstEnd;
  const cylinders = engine.cylinders;
  const instant = engine.instant;
  const perCylinder = engine.endsPerCylinder;
  const endPressure = pressure + FIRST_VOLUME + firstEnd;
  const room = at(pressure, ATMOSPHERE);
  let gear: number = 0;
  for (let k = 0; k < cylinders; k += 1) {
    const behind = perCylinder === 2 ? at(endPressure, k * 2 + 1) : room;
    gear += dragTorque(k, angle, Math.abs(speed), at(endPressure, k * perCylinder), behind);
  }
  put(instant, GEAR_TORQUE, gear);
}

/** Those of bearings and load. */
export function setSpeedTorques(speed: number): void {
  const instant = engine.instant;
  const quickness = Math.abs(speed);
  put(instant, BEARING_TORQUE, bearingTorque(quickness));
  put(instant, LOAD_TORQUE, loadTorque(quickness));
}
