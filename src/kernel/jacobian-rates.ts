/** What one unit of the independent variable x is worth, and the torques, at the instant of a Jacobian. */
import * as engine from './engine-seat.ts';
import { BEARING_TORQUE, GAS_TORQUE, GEAR_TORQUE, LOAD_TORQUE, PISTON_TORQUE } from './header.ts';
import { at } from './memory.ts';

export let speed: number = 0;
/** dt/dx and dθ/dx. */
export let timeRate: number = 0;
export let angleRate: number = 0;
/** Which way friction acts. */
export let direction: number = 0;
/** What a torque adds to the slope of speed or energy. */
export let perTorque: number = 0;

/** As at the instant; the instant's own are moved about. */
export let gasTorque: number = 0;
export let pistonTorque: number = 0;
export let gearTorque: number = 0;
export let bearingTorque: number = 0;
export let loadTorque: number = 0;

export function setRates(ofSpeed: number, time: number, angle: number, way: number, torque: number): void {
  speed = ofSpeed;
  timeRate = time;
  angleRate = angle;
  direction = way;
  perTorque = torque;
}

/** Takes the torques at the instant last observed; before any column. */
export function beginColumns(): void {
  const instant = engine.instant;
  gasTorque = at(instant, GAS_TORQUE);
  pistonTorque = at(instant, PISTON_TORQUE);
  gearTorque = at(instant, GEAR_TORQUE);
  bearingTorque = at(instant, BEARING_TORQUE);
  loadTorque = at(instant, LOAD_TORQUE);
}
