/** Contract of the variations: one thing about the engine that differs from one engine of a study to the next. */
import type { Family } from '../../kinds/kind.ts';
import { log10 } from '../../numerics/elementary/logarithm.ts';
import { pow } from '../../numerics/elementary/power.ts';

/** A value between two ends, written in one unit: "20 % of stroke" to "70 % of stroke". */
export interface Ramp {
  readonly from: number;
  readonly to: number;
  /** As it is written; may be empty. */
  readonly unit: string;
}

/** The same as something that every value can be taken from. */
export interface Range extends Ramp {
  /** The number at a share of the way from one end to the other, and back. */
  readonly valueAt: (share: number) => number;
  readonly shareOf: (value: number) => number;
}

/** No value at all: the engine is left as its file has it. */
export const LEFT_OUT = 'left out';

export interface Variation {
  /** Paths in the scenario that all take the value: "valve_gear.admission.closes". */
  readonly paths: readonly string[];
  /** How many values a grid or a list takes. */
  readonly count: number;
  /** The value of a number from 0 up to `count`, as one would write it in the scenario. */
  readonly level: (index: number) => string;
  /** The value at a share of the whole, from 0 up to 1. */
  readonly at: (share: number) => string;
  /** Only where every value between the ends may be taken. */
  readonly range?: Range;
  /** The unit of all its values, if they are numbers with one and the same. */
  readonly unit?: string;
}

/** Nine digits: more than anything is made to, few enough to hide the rounding of binary numbers. */
const DIGITS = 9;

export const rampText = (value: number, unit: string): string => {
  const number = String(Number(value.toPrecision(DIGITS)) + 0);
  return unit === '' ? number : `${number} ${unit}`;
};

/** A round number, 1 times a power of ten, that a range has at least `parts` of: as finely as its values are worth saying. */
export const roundPart = ({ from, to }: Ramp, parts: number): number =>
  pow(10, Math.floor(log10(Math.abs(to - from) / parts)));

/** The share nearby that makes a round value: nobody sets a cam to a millionth. The ends stay as they are. */
export function roundShare(range: Range, share: number, parts: number): number {
  if (share <= 0 || share >= 1) return share;
  const value = range.valueAt(share);
  // Small values of a range that goes in ratios are worth more digits.
  const fine = value === 0 ? Infinity : pow(10, Math.floor(log10(Math.abs(value) / 100)));
  const size = Math.min(roundPart(range, parts), Math.max(fine, roundPart(range, parts) / 100));
  const round = Math.round(value / size) * size;
  return Math.min(1, Math.max(0, range.shareOf(round)));
}

export type VariationFamily = Family<null, Variation>;
