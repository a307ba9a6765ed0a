/**
 * Narrow gaps, that is: leaks. Compressible laminar flow with an entrance-and-exit loss.
 *
 *   p₁² − p₂² = 24 μ R T₁ Z ṁ + K R T₁ (ṁ/A)²,  K = 1.5,  and never more than choked flow through A with Cd = 0.8
 *
 * Z [1/m³] is the gap's resistance, A [m²] its smallest cross-section. Isothermal in the gap, plain parallel walls.
 * The laminar part is the gas form of the Hagen–Poiseuille law (liquid form: Rabie, Fluid Power Engineering, eq. 2.19;
 * p₁² − p₂² scaling: leak-detection handbooks). K and Cd: common practice, no source.
 */
import { acosh } from '../numerics/elementary/hyperbolic.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import type { Gas } from './gas.ts';

const ENTRANCE_AND_EXIT_LOSS = 1.5;
const CHOKED_DISCHARGE_COEFFICIENT = 0.8;

/** 24 μ R T₁: all that the laminar part asks of the place upstream. */
export const laminarFactor = (gas: Gas, t1: number): number =>
  24 * gas.viscosity(t1) * gas.specificGasConstant * t1;

/** K R/A². */
export const gapLoss = (gas: Gas, section: number): number =>
  (ENTRANCE_AND_EXIT_LOSS * gas.specificGasConstant) / (section * section);

/** Choked flow per p₁/√T₁. */
export const gapChokedFactor = (gas: Gas, section: number): number =>
  CHOKED_DISCHARGE_COEFFICIENT * section * gas.chokedFlowFactor;

/**
 * Mass flow [kg/s] for a drive p₁² − p₂² ≥ 0 [Pa²], from the products of the law above: 24 μ R T₁ Z, K R T₁/A², and the
 * most that can pass.
 */
export function drivenFlow(laminar: number, loss: number, drive: number, most: number): number {
  const flow = (2 * drive) / (laminar + Math.sqrt(laminar * laminar + 4 * loss * drive));
  return Math.min(flow, most);
}

/** Change of an unchoked `drivenFlow` with its drive [kg/(s Pa²)]; by its square law it is 1/(laminar + 2 loss ṁ). */
export function drivenFlowSlope(laminar: number, loss: number, drive: number): number {
  return 1 / Math.sqrt(laminar * laminar + 4 * loss * drive);
}

/** Mass flow [kg/s]; p₁ ≥ p₂ ≥ 0 [Pa absolute], T₁ > 0 [K], Z > 0 [1/m³], A ≥ 0 [m²]. */
export function gapFlow(
  gas: Gas,
  resistance: number,
  section: number,
  p1: number,
  t1: number,
  p2: number,
): number {
  if (section === 0) return 0;
  return drivenFlow(
    laminarFactor(gas, t1) * resistance,
    gapLoss(gas, section) * t1,
    p1 * p1 - p2 * p2,
    (gapChokedFactor(gas, section) * p1) / Math.sqrt(t1),
  );
}

/** Asked along the turn, where a general power would be felt. */
const cube = (x: number): number => x * x * x;

/** Resistance of a straight slit of length L, width w, height h [m]. */
export const slitResistance = (length: number, width: number, height: number): number =>
  length / (width * cube(height));

/**
 * Factor by which an eccentric annulus passes more than a concentric one: 1 + 1.5 ε², ε = eccentricity/clearance.
 * 2.5 when the rod lies on the wall (Rabie, eq. 2.24).
 */
export const eccentricityFactor = (eccentricity: number): number => 1 + 1.5 * square(eccentricity);

/** Resistance of the annulus between a rod and its bore: bore D, radial clearance c, land L [m]. */
export function annulusResistance(
  bore: number,
  clearance: number,
  land: number,
  eccentricity: number,
): number {
  return slitResistance(land, Math.PI * bore, clearance) / eccentricityFactor(eccentricity);
}

/**
 * Resistance of a film of height h between flat or rolled-up faces, where the flow spreads between two mouths:
 * Z = 1/(S h³) with the plane-potential shape factor S = width/length of an equal straight strip.
 */
export const filmResistance = (shapeFactor: number, height: number): number =>
  1 / (shapeFactor * cube(height));

/** S between concentric circles: 2π/ln(r₂/r₁). */
export const radialShapeFactor = (inner: number, outer: number): number => (2 * Math.PI) / log(outer / inner);

/**
 * S between two circles of radii a and b that lie outside each other, centres a distance L > a + b apart:
 * 2π/arcosh((L² − a² − b²)/(2ab)) (conduction shape factor of two cylinders, heat-transfer texts).
 */
export function separateCirclesShapeFactor(a: number, b: number, distance: number): number {
  return (2 * Math.PI) / acosh((square(distance) - square(a) - square(b)) / (2 * a * b));
}

/**
 * S between a circle of radius a and the larger circle of radius b around it, centres a distance e < b − a apart:
 * 2π/arcosh((a² + b² − e²)/(2ab)) (same source).
 */
export function enclosedCircleShapeFactor(a: number, b: number, offset: number): number {
  return (2 * Math.PI) / acosh((square(a) + square(b) - square(offset)) / (2 * a * b));
}
