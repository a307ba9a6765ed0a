/**
 * x^n for any x ≥ 0, tabulated, for the inner loop: a third of what a power costs, right to some 1e-11 of the value.
 *
 * With x = 2ᵏ z, z from 1/2 up to 1, it is (2ⁿ)ᵏ zⁿ: one factor from a row of octaves, the other from a `PowerTable`. Slopes go
 * through from octave to octave.
 */
import { exponentOf, powersOfTwo, ZEROTH } from './elementary/powers-of-two.ts';
import { pow } from './elementary/power.ts';
import { powerFrom, powerTable, type PowerTable } from './power-table.ts';

/** Octaves on either side of 1; powers beyond are reckoned. */
const OCTAVES = 64;

export interface WidePowerTable {
  readonly exponent: number;
  readonly octaves: Float64Array;
  readonly withinOctave: PowerTable;
}

export const widePowerTable = (exponent: number): WidePowerTable => ({
  exponent,
  octaves: Float64Array.from({ length: 2 * OCTAVES + 1 }, (_, i) => pow(2, exponent * (i - OCTAVES))),
  withinOctave: powerTable(exponent, 0.5),
});

export function widePowerFrom({ exponent, octaves, withinOctave }: WidePowerTable, x: number): number {
  const k = exponentOf(x) + 1;
  if (!(x > 0 && Math.abs(k) <= OCTAVES)) return pow(x, exponent);
  return octaves[k + OCTAVES]! * powerFrom(withinOctave, x * powersOfTwo[ZEROTH - k]!);
}
