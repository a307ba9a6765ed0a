/**
 * What the kernel asks of its host: laws of single engines that it has no numbers for, and problems that are not engines.
 * The numbers of a question, and the answer, stand in the words of EXCHANGE (fixed-places.ts), in the order given.
 *
 * This is for plain TypeScript; host.wasm.ts says the same to the compiler to WebAssembly.
 */
import type { Index } from './memory.ts';

export interface Host {
  /** How far a passage in the list of laws is open: crank angle of its own [rad], speed [rad/s]. */
  opening(which: Index): void;
  /**
   * Mass flow [kg/s] of a passage without a common law: crank angle of its own, pressure at its beginning [Pa], temperature
   * [K] of its donor, pressure at its end, speed.
   */
  flow(passage: Index): void;
  /** Torque [N m] that drives the gear of a cylinder: crank angle of its own, speed, pressures of chest, cylinder, other end. */
  drag(cylinder: Index): void;
  /** Torque [N m] of the load: speed. */
  load(): void;
  /** Heat [W] from a wall: its area [m²], temperature and pressure of the gas, speed. */
  wallHeat(): void;
  /** Writes the slopes of another problem at the state in `state` into `slopes`. */
  slopes(x: number, state: Index, slopes: Index): void;
  /** Takes slopes and Jacobian at the state in START, steps of about that length ahead; 0 when a slope is not finite. */
  look(x: number, length: number): Index;
  /** Tries a step: its error as a share of the tolerance; NaN when it cannot be made. */
  attempt(length: number): number;
  /** A length for the next attempt at which something changes that the last one went past; 0 when there is none. */
  lengthToChange(): number;
  /** Shows the step that was just accepted to whom it concerns; not 0 when the journey is to stop there. */
  show(): Index;
}

let host: Host | undefined;

export function setHost(given: Host): void {
  host = given;
}

function asked(): Host {
  if (host === undefined) throw new Error('the kernel has no host');
  return host;
}

export const hostOpening: Host['opening'] = (which) => asked().opening(which);
export const hostFlow: Host['flow'] = (passage) => asked().flow(passage);
export const hostDrag: Host['drag'] = (cylinder) => asked().drag(cylinder);
export const hostLoad: Host['load'] = () => asked().load();
export const hostWallHeat: Host['wallHeat'] = () => asked().wallHeat();
export const hostSlopes: Host['slopes'] = (x, state, slopes) => asked().slopes(x, state, slopes);
export const hostLook: Host['look'] = (x, length) => asked().look(x, length);
export const hostAttempt: Host['attempt'] = (length) => asked().attempt(length);
export const hostLengthToChange: Host['lengthToChange'] = () => asked().lengthToChange();
export const hostShow: Host['show'] = () => asked().show();
