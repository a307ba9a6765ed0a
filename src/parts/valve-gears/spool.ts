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
 * Leaks of the shut spool, as thin films on the unrolled bore of circumference πD (shape factors S = width/length of
 * plane potential flow by conformal mapping; derived; within 6 % of a field solution for holes up to 0.6 of the bore,
 * see the tests). l is the land beyond the rim of the hole, the waist or the open end beyond it at one pressure:
 *   round the land, mouth to opposite mouth:         S = π / ln cot(a/D)
 *   along the land, mouth to a straight edge:        S = π / artanh √(tanh(l/D) / tanh((l + 2a)/D))
 *   mouth to mouth by both ways, round and by edge:  S = π / (2 artanh √(sinh(2l/D) / sinh(2(l + 2a)/D)))
 */
import { eccentricityFactor, filmResistance } from '../../gas/gap.ts';
import { areaInSeries } from '../../gas/nozzle.ts';
import { atanh, sinh, tanh } from '../../numerics/elementary/hyperbolic.ts';
import { acos } from '../../numerics/elementary/inverse-trigonometric.ts';
import { log } from '../../numerics/elementary/logarithm.ts';
import { tan } from '../../numerics/elementary/trigonometric.ts';

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

/** Area of a circle of radius a on the low side of a straight cut at z. */
function circleBelow(a: number, z: number): number {
  if (z <= -a) return 0;
  if (z >= a) return Math.PI * a * a;
  return a * a * acos(-z / a) + z * Math.sqrt(a * a - z * z);
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
  return Math.PI / log(1 / tan(holeDiameter / 2 / boreDiameter));
}

/** S along the land from a mouth to a straight edge `land` beyond the rim of the hole [m]. */
function alongShapeFactor({ boreDiameter, holeDiameter }: Spool, land: number): number {
  const share = tanh(land / boreDiameter) / tanh((land + holeDiameter) / boreDiameter);
  return Math.PI / atanh(Math.sqrt(share));
}

/** S from one mouth to the other, round the land and by way of a straight edge `land` beyond the holes [m]. */
function bothWaysShapeFactor({ boreDiameter, holeDiameter }: Spool, land: number): number {
  const share = sinh((2 * land) / boreDiameter) / sinh((2 * (land + holeDiameter)) / boreDiameter);
  return Math.PI / (2 * atanh(Math.sqrt(share)));
}

/**
 * Resistance [1/m³] of the shut spool between its two mouths, by the lift. Lying on the wall opens the ways along the bore,
 * not those round it, where the gap closes on one side as it opens on the other. The land is never counted shorter than the
 * clearance is high.
 */
export function shutResistance(spool: Spool): (lift: number) => number {
  const { lap, radialClearance } = spool;
  const round = roundShapeFactor(spool);
  const eccentric = eccentricityFactor(spool.eccentricity);
  const ofLand = (land: number): number => {
    const byEdge = Math.max(0, bothWaysShapeFactor(spool, land) - round);
    return filmResistance(round + eccentric * byEdge, radialClearance);
  };
  const least = ofLand(radialClearance);
  return (lift) => (lap - lift > radialClearance ? ofLand(lap - lift) : least);
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
