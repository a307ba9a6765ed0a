/**
 * What turns the piston's way into the crank's, exact. θ = 0 at top dead centre, growing in the running direction.
 *
 *   slider-crank:          x = r(1 − cos θ) + l − √(l² − r² sin²θ)      piston travel from top dead centre
 *   oscillating cylinder:  x = √(L² + r² − 2 L r cos θ) − (L − r)       oscillating-travel.ts
 *   x′ = dx/dθ,  x″ = d²x/dθ²                                           closed forms
 *
 * The functions take sin θ and cos θ because the derivative of the system needs all three at one angle.
 * Source: exact kinematics of any theory-of-machines text.
 */
import { acos } from '../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../numerics/elementary/trigonometric.ts';
import {
  oscillatingTravel,
  oscillatingTravelCurvature,
  oscillatingTravelRate,
  type OscillatingTrain,
} from './oscillating-travel.ts';

export interface CrankTrain {
  /** r, half the stroke [m]. */
  readonly crankRadius: number;
  /** l, centre to centre [m]; longer than the crank radius. */
  readonly rodLength: number;
  /** For a cylinder that rocks, with no connecting rod; then it alone says how the piston travels. */
  readonly oscillating?: OscillatingTrain;
  /**
   * For the crank end of a double-acting cylinder: its own turn begins at bottom dead centre and its stroke runs from
   * there. Only the stroke laws at the end of this file ask.
   */
  readonly fromCrankEnd?: boolean;
}

const rodProjection = ({ crankRadius: r, rodLength: l }: CrankTrain, sin: number): number =>
  Math.sqrt(l * l - r * r * sin * sin);

/** x [m]. */
export function pistonTravel(crank: CrankTrain, sin: number, cos: number): number {
  if (crank.oscillating) return oscillatingTravel(crank.oscillating, sin, cos);
  return crank.crankRadius * (1 - cos) + crank.rodLength - rodProjection(crank, sin);
}

/** x′ [m/rad]: piston speed per crank speed, and the lever arm of the piston force. */
export function pistonTravelRate(crank: CrankTrain, sin: number, cos: number): number {
  if (crank.oscillating) return oscillatingTravelRate(crank.oscillating, sin, cos);
  const r = crank.crankRadius;
  return r * sin + (r * r * sin * cos) / rodProjection(crank, sin);
}

/** No |x′| is larger [m/rad]: r where the rod's projection is at its shortest, and of a cylinder that rocks r itself. */
export function largestTravelRate({ crankRadius: r, rodLength: l, oscillating }: CrankTrain): number {
  return oscillating ? oscillating.crankRadius : r + (r * r) / (2 * Math.sqrt(l * l - r * r));
}

/** x″ [m/rad²]. */
export function pistonTravelCurvature(crank: CrankTrain, sin: number, cos: number): number {
  if (crank.oscillating) return oscillatingTravelCurvature(crank.oscillating, sin, cos);
  const r = crank.crankRadius;
  const rod = rodProjection(crank, sin);
  const doubleAngle = cos * cos - sin * sin;
  // d(rod)/dθ = −r² sin θ cos θ/rod.
  const shortening = (r * r * sin * cos) / rod;
  return r * cos + (r * r * doubleAngle + shortening * shortening) / rod;
}

/**
 * Share of the outward stroke covered at an angle after this end's own dead centre: from 0 to 1 on the way out and back
 * to 0. Outward is away from this end.
 */
export function strokeFraction(crank: CrankTrain, angle: number): number {
  const sign = crank.fromCrankEnd ? -1 : 1;
  const share = pistonTravel(crank, sign * sin(angle), sign * cos(angle)) / (2 * crank.crankRadius);
  return crank.fromCrankEnd ? 1 - share : share;
}

/** The angle in [0, π] at which the piston has covered a share of its outward stroke; `strokeFraction` inverted. */
export function angleAtStrokeFraction(crank: CrankTrain, fraction: number): number {
  return crank.fromCrankEnd ? Math.PI - angleOfTravel(crank, 1 - fraction) : angleOfTravel(crank, fraction);
}

/** Crank angle in [0, π] after top dead centre at a share of the travel, by the cosine rule. */
function angleOfTravel({ crankRadius: r, rodLength: l, oscillating }: CrankTrain, fraction: number): number {
  const share = Math.min(1, Math.max(0, fraction));
  return acos(
    Math.min(
      1,
      Math.max(-1, oscillating ? oscillatingCosine(oscillating, share) : sliderCosine(r, l, share)),
    ),
  );
}

/** Triangle of crank, rod and the wrist pin's distance d from the crank centre. */
function sliderCosine(r: number, l: number, share: number): number {
  const d = r + l - 2 * r * share;
  return (r * r + d * d - l * l) / (2 * r * d);
}

/** Triangle of crank, trunnion distance L and the crank pin's distance d from the trunnion. */
function oscillatingCosine({ crankRadius: r, trunnionDistance: l }: OscillatingTrain, share: number): number {
  const d = l - r + 2 * r * share;
  return (r * r + l * l - d * d) / (2 * r * l);
}
