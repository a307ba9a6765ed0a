/** Places in the turn, as builders say them, turned into crank angles. */
import type { CrankPosition } from '../kinds/parameter.ts';
import { angleAtStrokeFraction, type CrankTrain } from './crank-train.ts';

export const FULL_TURN = 2 * Math.PI;

/** Crank angle [rad], as given or in [0, 2π] when said by stroke. */
export function crankAngle(crank: CrankTrain, position: CrankPosition): number {
  switch (position.by) {
    case 'angle':
      return position.angle;
    case 'outward stroke':
      return angleAtStrokeFraction(crank, position.fraction);
    case 'return stroke':
      return FULL_TURN - angleAtStrokeFraction(crank, 1 - position.fraction);
  }
}

/** The same angle in [0, 2π). */
export function wrappedAngle(angle: number): number {
  // Most angles are at most a turn off, and the remainder of a division is slow.
  if (angle >= 0 && angle < FULL_TURN) return angle;
  if (angle >= FULL_TURN && angle < 2 * FULL_TURN) return angle - FULL_TURN;
  const rest = angle - FULL_TURN * Math.floor(angle / FULL_TURN);
  // A hair below zero rounds up to the whole turn, and whole turns may round to a hair below.
  return rest < 0 || rest >= FULL_TURN ? 0 : rest;
}

/** How far it is from one crank angle forward to another, in [0, 2π). */
export const forwardAngle = (from: number, to: number): number => wrappedAngle(to - from);
