/**
 * Whether a cam can be cut and will run: its sharpest convex place, its hollow places, its pressure angle; and the
 * smallest base circle that keeps all of them within their limits.
 *
 * A cam is undercut where the outline that the follower would need crosses itself: there the radius of curvature of the
 * convex side falls below zero, and what is left of the cam no longer lifts as wanted. Under a flat face the cam must be
 * convex everywhere. A hollow under a roller is no harm by itself; the file or cutter must fit into it.
 */
import { camMotion, type Cam, type CamMotion } from './cam.ts';
import { bendAt, restOf, type Bend, type CamShape, type Follower } from './cam-shape.ts';

export interface CamCheck {
  /** Smallest radius of curvature of the convex places [m]; below zero where it is undercut. */
  readonly sharpest: number;
  /** Radius of the tightest hollow [m]; undefined when the cam is convex. */
  readonly hollow: number | undefined;
  /** Largest pressure angle on rise and fall [rad]. */
  readonly pressureAngle: number;
  /** Width of face that a flat follower needs to one side [m]. */
  readonly aside: number;
}

/** Places along a flank, an eighth of a degree or so apart; extremes between them differ by less than 1e-5. */
const PLACES = 400;

/** Over both flanks, to a hair inside their ends, where a law that starts with a jump has its inner values. */
function flankMotions(cam: Cam): readonly CamMotion[] {
  const { flank, closingFlank, duration } = cam;
  const shares = Array.from({ length: PLACES + 1 }, (_, i) => Math.min(1 - 1e-9, Math.max(1e-9, i / PLACES)));
  const angles = [...shares.map((u) => u * flank), ...shares.map((u) => duration - u * closingFlank)];
  return angles.map((angle) => camMotion(cam, angle));
}

/** Under a roller a path that bends the other way is a hollow; under a flat face it is an undercut. */
const isHollow = (follower: Follower, { radiusOfCurvature }: Bend): boolean =>
  follower.face === 'roller' && radiusOfCurvature < -follower.radius;

export function checkCam({ cam, baseRadius, follower }: CamShape): CamCheck {
  const rest = restOf(baseRadius, follower);
  const bends = flankMotions(cam).map((motion) => bendAt(motion, rest, follower));
  const hollows = bends.filter((bend) => isHollow(follower, bend));
  const convex = bends.filter((bend) => !isHollow(follower, bend));
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), 0);
  return {
    sharpest: convex.reduce((least, { radiusOfCurvature }) => Math.min(least, radiusOfCurvature), Infinity),
    hollow:
      hollows.length === 0
        ? undefined
        : -hollows.reduce((tightest, { radiusOfCurvature: own }) => Math.max(tightest, own), -Infinity),
    pressureAngle: most(bends.map(({ pressureAngle }) => Math.abs(pressureAngle))),
    aside: most(bends.map(({ aside }) => Math.abs(aside))),
  };
}

export interface CamLimits {
  /** Smallest convex radius of curvature [m]. */
  readonly sharpest: number;
  /** Largest pressure angle [rad]. */
  readonly pressureAngle: number;
}

/** [m]; a cam as large as this is no cam for a workshop. */
const LARGEST = 0.5;

/**
 * Smallest base radius [m] within the limits, to two micrometres from above; undefined when there is none up to half a metre.
 * Every limit is kept the better the larger the base circle, so it is found by halving.
 */
export function smallestBaseRadius(
  { cam, follower }: Omit<CamShape, 'baseRadius'>,
  { sharpest, pressureAngle }: CamLimits,
  atLeast: number,
): number | undefined {
  const motions = flankMotions(cam);
  const holds = (baseRadius: number): boolean => {
    const rest = restOf(baseRadius, follower);
    return motions.every((motion) => {
      const bend = bendAt(motion, rest, follower);
      const round = isHollow(follower, bend) || bend.radiusOfCurvature >= sharpest;
      return round && Math.abs(bend.pressureAngle) <= pressureAngle;
    });
  };
  if (holds(atLeast)) return atLeast;
  if (!holds(LARGEST)) return undefined;
  let [low, high] = [atLeast, LARGEST];
  while (high - low > 2e-6) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
