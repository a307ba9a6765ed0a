/**
 * What the kernel asks of its host: laws of single engines that it has no numbers for, and problems that are not engines.
 *
 * This is for plain TypeScript; host.wasm.ts says the same to the compiler to WebAssembly.
 */
import type { Index } from './memory.ts';

export interface Host {
  /** How far a passage in the list of laws is open at a crank angle of its own [rad] and a speed [rad/s]. */
  opening(which: Index, angle: number, speed: number): number;
  /** Mass flow [kg/s] of a passage without a common law; all air has the temperature T [K] of its donor. */
  flow(passage: Index, angle: number, pFrom: number, t: number, pTo: number, speed: number): number;
  /** Torque [N m] that drives the gear of a cylinder. */
  drag(
    cylinder: Index,
    angle: number,
    speed: number,
    chest: number,
    cylinderPressure: number,
    otherEnd: number,
  ): number;
  load(speed: number): number;
  wallHeat(area: number, temperature: number, pressure: number, speed: number): number;
  /** Writes the slopes of another problem at the state in `state` into `slopes`. */
  slopes(x: number, state: Index, slopes: Index): void;
}

let host: Host | undefined;

export function setHost(given: Host): void {
  host = given;
}

function asked(): Host {
  if (host === undefined) throw new Error('the kernel has no host');
  return host;
}

export const hostOpening: Host['opening'] = (which, angle, speed) => asked().opening(which, angle, speed);
export const hostFlow: Host['flow'] = (passage, angle, pFrom, t, pTo, speed) =>
  asked().flow(passage, angle, pFrom, t, pTo, speed);
export const hostDrag: Host['drag'] = (cylinder, angle, speed, chest, cylinderPressure, otherEnd) =>
  asked().drag(cylinder, angle, speed, chest, cylinderPressure, otherEnd);
export const hostLoad: Host['load'] = (speed) => asked().load(speed);
export const hostWallHeat: Host['wallHeat'] = (area, temperature, pressure, speed) =>
  asked().wallHeat(area, temperature, pressure, speed);
export const hostSlopes: Host['slopes'] = (x, state, slopes) => asked().slopes(x, state, slopes);
