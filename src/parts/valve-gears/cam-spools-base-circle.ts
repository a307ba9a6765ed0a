/** How small the cam of a spool can be, by its curvature and by how askew it pushes. */
import { smallestBaseRadius } from '../cams/cam-check.ts';
import type { Follower } from '../cams/cam-shape.ts';
import type { PartContext } from '../part-context.ts';
import { camOf, type CamSpools, type SpoolName } from './cam-spools-parameters.ts';

export const followerOf = ({ cams }: CamSpools): Follower =>
  cams.follower === 'flat'
    ? { face: 'flat' }
    : { face: 'roller', radius: cams.roller_diameter / 2, offset: cams.follower_offset };

/** Radius [m] within the limits that the scenario sets, no less than the `room` of what it sits on; undefined if none will do. */
export function smallestCamRadius(
  gear: CamSpools,
  name: SpoolName,
  context: PartContext,
  room: number,
): number | undefined {
  const { smallest_radius, largest_pressure_angle, follower_offset } = gear.cams;
  return smallestBaseRadius(
    { cam: camOf(gear, name, context), follower: followerOf(gear) },
    { sharpest: smallest_radius, pressureAngle: largest_pressure_angle },
    // The roller's axis must pass within reach of the base circle.
    Math.max(room, 1.2 * Math.abs(follower_offset)),
  );
}

/** Diameter of the base circle [m] that does for both cams, on a plain shaft; endless if none will do. */
export function smallestBaseCircle(gear: CamSpools, context: PartContext): number {
  const room = gear.cams.shaft_diameter / 2;
  const radii = (['admission', 'exhaust'] as const).map(
    (name) => smallestCamRadius(gear, name, context, room) ?? Infinity,
  );
  return 2 * Math.max(...radii);
}
