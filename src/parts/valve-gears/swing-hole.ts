/**
 * The port of an oscillating cylinder, swinging over one round hole in the standing face.
 *
 * Both lie on a circle of radius R about the trunnion; the hole at an angle β from the middle line, on the side to which
 * the port swings first. With the swing φ their centres are 2R sin(|φ − β|/2) apart, and the opening is what the two
 * circles share. A hole on the other side is the same thing with the crank angle counted backwards.
 */
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { forwardAngle } from '../crank-positions.ts';
import { sharedCircleArea } from '../geometry/circles.ts';
import { anglesAtSwing, swing, type OscillatingTrain } from '../oscillating-travel.ts';

export interface SwingHole {
  readonly train: OscillatingTrain;
  /** R [m]. */
  readonly holeCircle: number;
  readonly portDiameter: number;
  readonly holeDiameter: number;
  /** β [rad]. */
  readonly position: number;
}

const chordOf = (holeCircle: number, angle: number): number => 2 * holeCircle * sin(angle / 2);
const angleOf = (holeCircle: number, chord: number): number =>
  2 * asin(Math.min(1, chord / (2 * holeCircle)));

/** Centre to centre when port and hole touch [m]. */
export const touchDistance = ({ portDiameter, holeDiameter }: SwingHole): number =>
  (portDiameter + holeDiameter) / 2;

/** The same as an angle at the trunnion [rad]. */
export const touchAngle = (hole: SwingHole): number => angleOf(hole.holeCircle, touchDistance(hole));

/** Centre to centre [m] at a swing of the cylinder [rad], counted towards the hole. */
export const distanceAtSwing = ({ holeCircle, position }: SwingHole, towards: number): number =>
  chordOf(holeCircle, Math.abs(towards - position));

/** The same at a crank angle. */
export const centreDistance = (hole: SwingHole, angle: number): number =>
  distanceAtSwing(hole, swing(hole.train, angle));

/** Shared area [m²] at a crank angle. */
export const swingOpening = (hole: SwingHole, angle: number): number =>
  sharedCircleArea(hole.portDiameter / 2, hole.holeDiameter / 2, centreDistance(hole, angle));

/** Crank angles at which the port's centre is a distance from the hole's, before and behind it. */
export function anglesAtDistance(hole: SwingHole, distance: number): number[] {
  const apart = angleOf(hole.holeCircle, distance);
  return [hole.position - apart, hole.position + apart].flatMap(
    (wanted) => anglesAtSwing(hole.train, wanted) ?? [],
  );
}

/** Crank angles at which the port begins to uncover the hole and has just covered it again. */
export function openAndShut(hole: SwingHole): readonly [opens: number, shuts: number] {
  const angles = anglesAtSwing(hole.train, hole.position - touchAngle(hole));
  if (angles === undefined) throw new Error('the port never meets the hole; this has a complaint');
  return angles;
}

/** Crank angles after opening at which the shape of the opening changes, ascending, the first and the last included. */
export function openingBreakpoints(hole: SwingHole): number[] {
  const [opens, shuts] = openAndShut(hole);
  const inside = Math.abs(hole.portDiameter - hole.holeDiameter) / 2;
  const duration = shuts - opens;
  const between = anglesAtDistance(hole, inside)
    .map((angle) => forwardAngle(opens, angle))
    .filter((since) => since > 1e-6 && since < duration - 1e-6)
    .sort((a, b) => a - b);
  const distinct = between.filter((since, i) => i === 0 || since - between[i - 1]! > 1e-6);
  return [0, ...distinct, duration];
}
