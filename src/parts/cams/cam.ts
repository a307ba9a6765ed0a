/**
 * A cam that lifts a spool once a turn: rise, dwell, fall, and rest on the base circle.
 *
 * The builder thinks in the angles at which the port cracks open and is shut again; the cam must begin earlier, to take
 * up the lash and the lap. With "crack lift" = lash + lap reached at a share u₀ of the rise, the rise begins u₀ flanks
 * before opening and the fall ends u₀ closing flanks after closing.
 */
import { square } from '../../numerics/elementary/whole-powers.ts';
import { forwardAngle } from '../crank-positions.ts';
import { camAngleAtLift, type CamLaw } from './cam-law.ts';

export interface Cam {
  readonly law: CamLaw;
  /** Full lift of the cam [m] and lash [m] between cam and spool. */
  readonly lift: number;
  readonly lash: number;
  /** Crank angles [rad] that the rise and the fall take. */
  readonly flank: number;
  readonly closingFlank: number;
  /** Crank angle at which the rise begins [rad], and from there to the end of the fall. */
  readonly riseBegins: number;
  readonly duration: number;
}

interface CamWish {
  readonly law: CamLaw;
  readonly lift: number;
  readonly lash: number;
  readonly flank: number;
  readonly closingFlank: number;
  /** Crank angles at which the port shall open and be shut [rad]. */
  readonly opens: number;
  readonly closes: number;
  /** Lift of the spool at which the port cracks open [m]. */
  readonly lap: number;
}

export function camFor(wish: CamWish): Cam {
  const share = camAngleAtLift(wish.law, (wish.lash + wish.lap) / wish.lift);
  return {
    law: wish.law,
    lift: wish.lift,
    lash: wish.lash,
    flank: wish.flank,
    closingFlank: wish.closingFlank,
    riseBegins: wish.opens - share * wish.flank,
    duration: forwardAngle(wish.opens, wish.closes) + share * (wish.flank + wish.closingFlank),
  };
}

/** Lift of the spool [m] at a share of either flank: what is left of the cam's lift after the lash. */
export const spoolLiftOnFlank = (cam: Cam, share: number): number =>
  Math.max(0, cam.lift * (share < 1 ? cam.law.lift(share) : 1) - cam.lash);

/** The same at a crank angle. */
export function spoolLift(cam: Cam, angle: number): number {
  const since = forwardAngle(cam.riseBegins, angle);
  const share = Math.min(since / cam.flank, (cam.duration - since) / cam.closingFlank);
  return share <= 0 ? 0 : spoolLiftOnFlank(cam, share);
}

/** Share of either flank at which the spool has a lift [m]; the whole flank for one that it does not reach. */
export function flankShareAtLift(cam: Cam, lift: number): number {
  const share = (lift + cam.lash) / cam.lift;
  return share < 1 ? camAngleAtLift(cam.law, share) : 1;
}

/** Lift of the cam's surface [m] and its derivatives by the cam's angle [m/rad, m/rad²], an angle after the rise begins. */
export interface CamMotion {
  readonly lift: number;
  readonly slope: number;
  readonly bend: number;
}

const AT_REST: CamMotion = { lift: 0, slope: 0, bend: 0 };

export function camMotion(cam: Cam, sinceRise: number): CamMotion {
  const { law, lift, duration } = cam;
  const [rising, sinking] = [sinceRise / cam.flank, (duration - sinceRise) / cam.closingFlank];
  const falling = sinking < rising;
  const flank = falling ? cam.closingFlank : cam.flank;
  const u = Math.min(rising, sinking);
  if (u <= 0) return AT_REST;
  if (u >= 1) return { lift, slope: 0, bend: 0 };
  const slope = (lift * law.slope(u)) / flank;
  return {
    lift: lift * law.lift(u),
    slope: falling ? -slope : slope,
    bend: (lift * law.bend(u)) / square(flank),
  };
}

/** Crank angles at which the cam law kinks or the spool passes one of the given lifts [m]. */
export function camEdges(cam: Cam, spoolLifts: readonly number[]): number[] {
  const shares = spoolLifts
    .map((lift) => (lift + cam.lash) / cam.lift)
    .filter((share) => share > 0 && share < 1)
    .map((share) => camAngleAtLift(cam.law, share));
  return [0, 1, ...shares].flatMap((u) => [
    cam.riseBegins + u * cam.flank,
    cam.riseBegins + cam.duration - u * cam.closingFlank,
  ]);
}
