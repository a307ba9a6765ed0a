/**
 * When an electrically driven valve is open: switched at given crank angles, moving by the clock.
 *
 * At crank speed ω the valve begins to open ω·t_o after the command (t_o: opening delay), takes ω·t_m for its full travel,
 * and begins to shut ω·t_c after the command to shut. It has been moving for s = commanded angle + ω(t_c − t_o) by then:
 *
 *   opening = min(1, θ/(ω t_m), (s + min(s, ω t_m) − θ)/(ω t_m)),  θ counted from where it begins to open
 *
 * With s < ω·t_m it turns back half open, with s ≤ 0 it never stirs; in between the peak falls to zero evenly. When it
 * shuts too late for the next turn's command, the larger of both openings holds.
 *
 * Assumes that the speed has been the present one since the command (quasi-steady), and equal travel both ways.
 */
import { forwardAngle, FULL_TURN } from '../crank-positions.ts';

export interface SwitchedValve {
  /** Crank angles of the commands [rad]. */
  readonly opens: number;
  readonly closes: number;
  /** From a command to the first movement [s]. */
  readonly openingDelay: number;
  readonly closingDelay: number;
  /** From shut to fully open, and back [s]. */
  readonly travelTime: number;
}

/** The travel never takes less crank angle, so that the area has no step with the crank at rest [rad]. */
const SHORTEST_TRAVEL = (0.1 * Math.PI) / 180;

export const commandedLength = ({ opens, closes }: SwitchedValve): number => forwardAngle(opens, closes);

/** From 0 shut to 1 fully open. */
export function openingAt(valve: SwitchedValve, angle: number, speed: number): number {
  const travel = Math.max(speed * valve.travelTime, SHORTEST_TRAVEL);
  const moved = commandedLength(valve) + speed * (valve.closingDelay - valve.openingDelay);
  const shutAgain = moved + Math.min(moved, travel);
  const since = forwardAngle(valve.opens + speed * valve.openingDelay, angle);
  const ofThisTurn = Math.min(since, shutAgain - since);
  const ofLastTurn = shutAgain - since - FULL_TURN;
  return Math.max(0, Math.min(1, Math.max(ofThisTurn, ofLastTurn) / travel));
}

/** Kinks with the crank at rest, where all delays vanish. */
export const restingEdges = ({ opens, closes }: SwitchedValve): number[] => [
  opens,
  opens + SHORTEST_TRAVEL,
  closes,
  closes + SHORTEST_TRAVEL,
];

/** Speed [rad/s] above which the travel is cut short; none when the valve shuts late enough for any. */
export function fullOpeningLimit(valve: SwitchedValve): number | undefined {
  return speedAt(valve, valve.travelTime + valve.openingDelay - valve.closingDelay);
}

/** Speed [rad/s] above which the valve stays shut; none when its shutting is as slow as its opening. */
export const anyOpeningLimit = (valve: SwitchedValve): number | undefined =>
  speedAt(valve, valve.openingDelay - valve.closingDelay);

/** Speed [rad/s] above which the valve is not shut yet when it is told to open again. */
export function shuttingLimit(valve: SwitchedValve): number | undefined {
  const shut = FULL_TURN - commandedLength(valve);
  const late = valve.closingDelay + valve.travelTime - valve.openingDelay;
  return late > 0 ? shut / late : undefined;
}

const speedAt = (valve: SwitchedValve, time: number): number | undefined =>
  time > 0 ? commandedLength(valve) / time : undefined;
