/**
 * Lengths of a spool and its block along the bore, all from the face of the block on the collar's side, where the shut
 * spool is stopped. Positive into the block, towards the cam.
 *
 *   hole centre   = end land + a                       a: radius of the hole
 *   waist begins  = hole centre + a + lap              the edge that opens the port; a lift s brings it s nearer to 0
 *   waist ends    = waist begins + waist length
 *   block ends    = waist ends + guide land
 *   spool ends    = block ends + follower reach
 */
import { square } from '../../numerics/elementary/whole-powers.ts';
import { clearanceOf, type ClearanceSpread } from '../../parts/fits/clearance.ts';
import { deviationsOf, type Deviations } from '../../parts/fits/limits-of-size.ts';
import type { CamSpools, SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';

export interface SpoolPlan {
  readonly diameter: number;
  readonly waistDiameter: number;
  readonly hole: number;
  readonly holeCentre: number;
  readonly waistBegins: number;
  readonly waistEnds: number;
  readonly blockLength: number;
  /** From the collar's stopping face to the end at the cam. */
  readonly spoolLength: number;
  readonly blockWidth: number;
  readonly collarThickness: number;
  readonly collarDiameter: number;
  /** Stub beyond the collar that the spring goes round [m]. */
  readonly pilotDiameter: number;
  readonly lap: number;
  /** Lift of the spool [m]: the cam's less the lash. */
  readonly lift: number;
  readonly overTravel: number;
  readonly clearance: ClearanceSpread;
  /** Limits of bore and rod about the nominal diameter; a plain gap has none. */
  readonly deviations: Deviations | undefined;
}

export function planSpool({ blocks, ...gear }: CamSpools, name: SpoolName): SpoolPlan {
  const own = gear[name];
  const holeCentre = own.end_land + own.hole_diameter / 2;
  const waistBegins = holeCentre + own.hole_diameter / 2 + own.lap;
  const waistEnds = waistBegins + own.waist_length;
  const blockLength = waistEnds + (blocks.guide_land ?? Math.max(own.end_land, own.spool_diameter / 2));
  return {
    diameter: own.spool_diameter,
    waistDiameter: own.waist_diameter,
    hole: own.hole_diameter,
    holeCentre,
    waistBegins,
    waistEnds,
    blockLength,
    spoolLength: blockLength + blocks.follower_reach,
    blockWidth: blocks.width ?? Math.ceil(2.5e3 * own.spool_diameter) / 1e3,
    collarThickness: blocks.collar_thickness,
    collarDiameter: Math.ceil(1.5e3 * own.spool_diameter) / 1e3,
    pilotDiameter: Math.floor(1.4e3 * own.spool_diameter) / 2e3,
    lap: own.lap,
    lift: own.lift - own.lash,
    overTravel: blocks.over_travel,
    clearance: clearanceOf(own.spool_diameter, own.clearance),
    deviations: own.clearance.by === 'gap' ? undefined : deviationsOf(own.spool_diameter, own.clearance),
  };
}

const STEEL_DENSITY = 7850;

/** Mass of the spool with its collar, of steel [kg]. */
export function spoolMass(plan: SpoolPlan): number {
  const disc = (diameter: number, length: number): number => (Math.PI / 4) * square(diameter) * length;
  const waist = plan.waistEnds - plan.waistBegins;
  const volume =
    disc(plan.diameter, plan.spoolLength - waist) +
    disc(plan.waistDiameter, waist) +
    disc(plan.collarDiameter, plan.collarThickness);
  return STEEL_DENSITY * volume;
}
