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
import { camMotion, type Cam } from './cam.ts';

export type Follower =
  { readonly face: 'flat' } | { readonly face: 'roller'; readonly radius: number; readonly offset: number };

export interface CamShape {
  readonly cam: Cam;
  readonly baseRadius: number;
  readonly follower: Follower;
}

/** A point of the cam with what is to be known about it. */
export interface Contact {
  readonly x: number;
  readonly y: number;
  /** Of the outline there, the way its angle grows [rad]. */
  readonly direction: number;
  /** ρ [m]; negative where the cam is hollow. */
  readonly radiusOfCurvature: number;
  /** α [rad]; zero under a flat face. */
  readonly pressureAngle: number;
  /** Where a flat face is touched, aside of its axis [m]. */
  readonly aside: number;
}

/** d [m]: axis of the shaft to the roller's centre, along the follower, on the base circle. */
export const restDistance = (baseRadius: number, radius: number, offset: number): number =>
  Math.sqrt((baseRadius + radius) ** 2 - offset ** 2);

/** The contact at an angle φ [rad] after the rise begins, with the follower's axis then along +x turned by φ. */
export function contactAt({ cam, baseRadius, follower }: CamShape, angle: number): Contact {
  const { lift, slope, bend } = camMotion(cam, angle);
  const place = (radial: number, tangential: number) => ({
    x: radial * Math.cos(angle) - tangential * Math.sin(angle),
    y: radial * Math.sin(angle) + tangential * Math.cos(angle),
  });
  if (follower.face === 'flat')
    return {
      ...place(baseRadius + lift, slope),
      direction: angle + Math.PI / 2,
      radiusOfCurvature: baseRadius + lift + bend,
      pressureAngle: 0,
      aside: slope,
    };
  const { radius, offset } = follower;
  const along = restDistance(baseRadius, radius, offset) + lift;
  const across = slope - offset;
  const speed = Math.hypot(along, across);
  // c′ = (across, along), c″ = (bend − along, slope + across) in the axes u and t.
  const bending = across * (slope + across) - along * (bend - along);
  return {
    ...place(along - (radius * along) / speed, offset + (radius * across) / speed),
    direction: angle + Math.atan2(along, across),
    radiusOfCurvature: speed ** 3 / bending - radius,
    pressureAngle: Math.atan2(across, along),
    aside: 0,
  };
}
