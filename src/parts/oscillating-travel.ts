/**
 * Kinematics of an oscillating cylinder, exact: the piston rod goes straight to the crank pin, and the cylinder swings
 * about a trunnion at a distance L from the crank centre, with the cover on the far side.
 *
 *   d  = √((L − r cos θ)² + (r sin θ)²)              crank pin to trunnion
 *   x  = d − (L − r)                                 piston travel from top dead centre
 *   x′ = L r sin θ/d                                 and its derivative x″
 *   φ  = atan2(r sin θ, L − r cos θ)                 swing, positive on the outward stroke, at most asin(r/L)
 *
 * Signatures as in crank-train.ts. Source: triangle of crank, trunnion and pin.
 */
import { acos, asin, atan2 } from '../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../numerics/elementary/trigonometric.ts';
import { cube, square } from '../numerics/elementary/whole-powers.ts';

export interface OscillatingTrain {
  /** r, half the stroke [m]. */
  readonly crankRadius: number;
  /** L, crank centre to trunnion [m]; longer than the crank radius. */
  readonly trunnionDistance: number;
}

/** d [m]. */
const pinDistance = (
  { crankRadius: r, trunnionDistance: l }: OscillatingTrain,
  sin: number,
  cos: number,
): number => Math.sqrt(square(l - r * cos) + square(r * sin));

/** x [m]. */
export function oscillatingTravel(train: OscillatingTrain, sin: number, cos: number): number {
  return pinDistance(train, sin, cos) - (train.trunnionDistance - train.crankRadius);
}

/** x′ [m/rad]: piston speed per crank speed, and the lever arm of the piston force. */
export function oscillatingTravelRate(train: OscillatingTrain, sin: number, cos: number): number {
  return (train.trunnionDistance * train.crankRadius * sin) / pinDistance(train, sin, cos);
}

/** x″ [m/rad²]. */
export function oscillatingTravelCurvature(train: OscillatingTrain, sin: number, cos: number): number {
  const product = train.trunnionDistance * train.crankRadius;
  const d = pinDistance(train, sin, cos);
  return (product * cos) / d - square(product * sin) / cube(d);
}

/** φ [rad]. */
export function swing({ crankRadius: r, trunnionDistance: l }: OscillatingTrain, angle: number): number {
  return atan2(r * sin(angle), l - r * cos(angle));
}

/** dφ/dθ. */
export function swingRate({ crankRadius: r, trunnionDistance: l }: OscillatingTrain, angle: number): number {
  const cosine = cos(angle);
  return (r * (l * cosine - r)) / (l * l + r * r - 2 * l * r * cosine);
}

export const greatestSwing = ({ crankRadius: r, trunnionDistance: l }: OscillatingTrain): number =>
  asin(r / l);

/** Crank angle of the greatest swing [rad], where rod and crank stand square; it swings back at minus this angle. */
export const angleOfGreatestSwing = ({ crankRadius: r, trunnionDistance: l }: OscillatingTrain): number =>
  acos(r / l);

/**
 * The crank angles at which the cylinder passes a swing, out and back; none beyond its reach.
 * Law of sines: r sin(θ + φ) = L sin φ.
 */
export function anglesAtSwing(
  { crankRadius: r, trunnionDistance: l }: OscillatingTrain,
  wanted: number,
): readonly [out: number, back: number] | undefined {
  const sine = (l * sin(wanted)) / r;
  if (Math.abs(sine) >= 1) return undefined;
  const sum = asin(sine);
  return [sum - wanted, Math.PI - sum - wanted];
}
