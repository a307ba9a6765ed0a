/**
 * The outline of a cam, exactly, point by point, for a flat or a roller follower that moves straight.
 *
 * In the frame of the cam the follower goes round it by the angle φ. With u the direction of the follower's axis, t the
 * direction in which φ grows, lift s(φ) and base radius R_b:
 *
 *   flat face      point  p = (R_b + s) u + s′ t,           radius of curvature  ρ = R_b + s + s″
 *   roller centre  c = (d + s) u + e t,  d = √((R_b + R_r)² − e²)
 *                  point  p = c − R_r N,  N the outward normal of the centre's path,
 *                  ρ = |c′|³/(c′ × c″) − R_r;   pressure angle  tan α = (s′ − e)/(d + s)
 *
 * e is the offset of the follower's axis and R_r the roller's radius. A flat face has no pressure angle; instead the
 * contact wanders s′ to either side of its axis. Assumes a follower guided without play, square to the shaft.
 * Source: envelopes of the follower in the cam's frame, as in machine-design texts (Norton, Cam Design; from memory).
 */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { camMotion, type Cam, type CamMotion } from './cam.ts';

export type Follower =
  { readonly face: 'flat' } | { readonly face: 'roller'; readonly radius: number; readonly offset: number };

export interface CamShape {
  readonly cam: Cam;
  readonly baseRadius: number;
  readonly follower: Follower;
}

/** What is to be known about a place of the cam. */
export interface Bend {
  /** ρ [m]; negative where the cam is hollow. */
  readonly radiusOfCurvature: number;
  /** α [rad]; zero under a flat face. */
  readonly pressureAngle: number;
  /** Where a flat face is touched, aside of its axis [m]. */
  readonly aside: number;
}

/** A point of the cam. */
export interface Contact extends Bend {
  readonly x: number;
  readonly y: number;
  /** Of the outline there, the way its angle grows [rad]. */
  readonly direction: number;
}

/** d [m]: axis of the shaft to the roller's centre, along the follower, on the base circle. */
export const restDistance = (baseRadius: number, radius: number, offset: number): number =>
  Math.sqrt(square(baseRadius + radius) - square(offset));

/** How the cam is bent where the follower has come to a motion on a base circle; `rest` is its distance from the shaft at rest. */
export function bendAt({ lift, slope, bend }: CamMotion, rest: number, follower: Follower): Bend {
  if (follower.face === 'flat')
    return { radiusOfCurvature: rest + lift + bend, pressureAngle: 0, aside: slope };
  const { radius, offset } = follower;
  const along = rest + lift;
  const across = slope - offset;
  // c′ = (across, along), c″ = (bend − along, slope + across) in the axes u and t.
  const bending = across * (slope + across) - along * (bend - along);
  const speed = Math.sqrt(along * along + across * across);
  return {
    radiusOfCurvature: (speed * speed * speed) / bending - radius,
    pressureAngle: atan2(across, along),
    aside: 0,
  };
}

/** Axis of the shaft to the follower's face, or to its centre along its axis, on the base circle [m]. */
export const restOf = (baseRadius: number, follower: Follower): number =>
  follower.face === 'flat' ? baseRadius : restDistance(baseRadius, follower.radius, follower.offset);

/** The contact at an angle φ [rad] after the rise begins, with the follower's axis then along +x turned by φ. */
export function contactAt({ cam, baseRadius, follower }: CamShape, angle: number): Contact {
  const motion = camMotion(cam, angle);
  const rest = restOf(baseRadius, follower);
  const bend = bendAt(motion, rest, follower);
  const place = (radial: number, tangential: number) => ({
    x: radial * cos(angle) - tangential * sin(angle),
    y: radial * sin(angle) + tangential * cos(angle),
  });
  const along = rest + motion.lift;
  if (follower.face === 'flat')
    return { ...place(along, motion.slope), direction: angle + Math.PI / 2, ...bend };
  const { radius, offset } = follower;
  const across = motion.slope - offset;
  const speed = hypot(along, across);
  return {
    ...place(along - (radius * along) / speed, offset + (radius * across) / speed),
    direction: angle + atan2(along, across),
    ...bend,
  };
}
