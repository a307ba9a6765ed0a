/**
 * The force between cam and follower over a turn, and the speed at which the follower floats off.
 *
 *   F = F₀ + k s + m s″ ω²          along the follower's axis; divided by cos α at a roller's contact
 *   ω_float² = min (F₀ + k s)/(−m s″)  where s″ < 0
 *
 * s is the lift of the spool, the cam's lift less the lash; s″ that of the cam by angle. Assumes rigid parts, no friction,
 * no air force on the ends of the spool, and takes no account of the blow with which the lash is taken up.
 * Source: equation of motion of the follower; criterion F > 0 in machine-design texts (Norton; in words, seen).
 */
import { square } from '../../numerics/elementary/whole-powers.ts';
import { camMotion, type Cam } from '../../parts/cams/cam.ts';

export interface Loading {
  /** Force of the spring with the valve shut [N], its rate [N/m], and the mass that moves [kg]. */
  readonly preload: number;
  readonly rate: number;
  readonly mass: number;
}

/** A place on the cam where the spool is off its stop. */
export interface LiftedPlace {
  /** After the rise begins [rad]. */
  readonly angle: number;
  /** Lift of the spool [m], s″ [m/rad²]. */
  readonly lift: number;
  readonly bend: number;
}

/** Places along each flank. */
const PLACES = 360;

export function liftedPlaces(cam: Cam): LiftedPlace[] {
  const shares = Array.from({ length: PLACES + 1 }, (_, i) => Math.min(1 - 1e-9, Math.max(1e-9, i / PLACES)));
  const angles = [
    ...shares.map((share) => share * cam.flank),
    ...shares.map((share) => cam.duration - share * cam.closingFlank),
  ];
  return angles
    .map((angle) => {
      const { lift, bend } = camMotion(cam, angle);
      return { angle, lift: lift - cam.lash, bend };
    })
    .filter(({ lift }) => lift > 0);
}

/** [N], along the follower, at a crank speed [rad/s]. */
export const contactForce = ({ preload, rate, mass }: Loading, place: LiftedPlace, speed: number): number =>
  preload + rate * place.lift + mass * place.bend * square(speed);

/** Crank speed [rad/s] at which the follower begins to leave the cam, on the rise or on the fall. */
export function floatSpeed(cam: Cam, { preload, rate, mass }: Loading): number {
  const squares = liftedPlaces(cam)
    .filter(({ bend }) => bend < 0)
    .map(({ lift, bend }) => (preload + rate * lift) / (-mass * bend));
  return Math.sqrt(squares.reduce((a, b) => Math.min(a, b), Infinity));
}
