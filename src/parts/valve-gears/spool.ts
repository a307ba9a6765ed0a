/**
 * One spool: a round rod with a waist, sliding in a bore that is crossed by a drilled passage.
 *
 * Axial coordinate z along the bore, zero at the cross hole's centre, positive in the direction of lift. At rest the
 * waist's leading edge stands `lap` short of the hole; lifted by s it stands at z = −a − lap + s (a: hole radius).
 *
 *   mouth:  the part of the hole's circle that the waist uncovers, a circle cut by two straight edges
 *   round:  the way round the waist to the opposite mouth, two channels: (D − d) × waist length
 *   both mouths and the way round stand one behind the other: 1/S² = 2/S_mouth² + 1/S_round²
 *
 * Leaks of the shut spool, as thin films on the unrolled bore of circumference P = πD (shape factors S = width/length,
 * plane potential flow, images repeated every P; derived, checked against a field solution in the tests):
 *   round the land, mouth to opposite mouth:   S = π / ln cot(a/D)
 *   along the land, mouth to a straight edge:  S = 2π / arcosh(½ sinh(2πz/P) / sin(πa/P)), z from centre to edge
 */
import { eccentricityFactor, filmResistance } from '../../gas/gap.ts';
import { areaInSeries } from '../../gas/nozzle.ts';

export interface Spool {
  readonly boreDiameter: number;
  readonly waistDiameter: number;
  readonly waistLength: number;
  readonly holeDiameter: number;
  readonly radialClearance: number;
  /** Offset of the spool over its clearance: 0 centred, 1 lying on the wall. */
  readonly eccentricity: number;
  /** How far the land covers the hole's edge on the waist side when shut [m]. */
  readonly lap: number;
  /** Land between the hole's edge and the open end of the bore, shut [m]. */
  readonly endLand: number;
}

/** Area of a circle of radius a on the low side of a straight cut at z, −a ≤ z ≤ a. */
function circleBelow(a: number, z: number): number {
  const cut = Math.min(a, Math.max(-a, z));
  return a * a * Math.acos(-cut / a) + cut * Math.sqrt(a * a - cut * cut);
}

/** Area of one mouth [m²] that the waist uncovers at a lift [m]. */
export function mouthArea(spool: Spool, lift: number): number {
  const a = spool.holeDiameter / 2;
  const leading = lift - a - spool.lap;
  return circleBelow(a, leading) - circleBelow(a, leading - spool.waistLength);
}

/** Lifts [m] at which the mouth begins to open, is widest, begins to shut behind the waist, and is past it. */
export function mouthLifts({ holeDiameter: d, lap, waistLength }: Spool): readonly number[] {
  return [lap, lap + d, lap + waistLength, lap + waistLength + d];
}

/** Effective area [m²] of the whole way through at a lift. */
export function spoolArea(spool: Spool, dischargeCoefficient: number, lift: number): number {
  const mouth = dischargeCoefficient * mouthArea(spool, lift);
  const around = dischargeCoefficient * (spool.boreDiameter - spool.waistDiameter) * spool.waistLength;
  return areaInSeries(areaInSeries(mouth, mouth), around);
}

/** S round the land from one mouth to the opposite one. */
export function roundShapeFactor({ boreDiameter, holeDiameter }: Spool): number {
  return Math.PI / Math.log(1 / Math.tan(holeDiameter / 2 / boreDiameter));
}

/** S along the land from a mouth to a straight edge `land` beyond the rim of the hole [m]. */
export function alongShapeFactor({ boreDiameter, holeDiameter }: Spool, land: number): number {
  const a = holeDiameter / 2;
  const circumference = Math.PI * boreDiameter;
  const reach =
    Math.sinh((2 * Math.PI * (a + land)) / circumference) / Math.sin((Math.PI * a) / circumference);
  return (2 * Math.PI) / Math.acosh(Math.max(reach / 2, 1));
}

/**
 * Resistance [1/m³] of the shut spool between its two mouths: round the land, and along it into the waist and out again.
 * The land towards the waist is never counted shorter than the clearance is high.
 */
export function shutResistance(spool: Spool, lift: number): number {
  const land = Math.max(spool.lap - lift, spool.radialClearance);
  const viaWaist = (alongShapeFactor(spool, land) * eccentricityFactor(spool.eccentricity)) / 2;
  return filmResistance(roundShapeFactor(spool) + viaWaist, spool.radialClearance);
}

/** Resistance [1/m³] from one mouth along the end land to the open; the bore's end stands still, so lift is no matter. */
export function endResistance(spool: Spool): number {
  const land = Math.max(spool.endLand, spool.radialClearance);
  const shapeFactor = alongShapeFactor(spool, land) * eccentricityFactor(spool.eccentricity);
  return filmResistance(shapeFactor, spool.radialClearance);
}

/** Smallest cross-section [m²] of a leak out of one mouth: its rim times the clearance. */
export const mouthRim = ({ holeDiameter, radialClearance }: Spool): number =>
  Math.PI * holeDiameter * radialClearance;
