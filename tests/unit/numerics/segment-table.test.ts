/** A tabulated function agrees with the function itself, also where that starts like the power 1.5 of the distance. */
import { describe, expect, it } from 'vitest';
import { segmentValue } from '../../../src/numerics/segment-table.ts';
import { segmentTable } from '../../../src/numerics/tabulating.ts';

/** Largest error of a table over its range. */
function worst(f: (x: number) => number, breakpoints: readonly number[]): number {
  const table = segmentTable(f, breakpoints);
  const [from, to] = [breakpoints[0]!, breakpoints.at(-1)!];
  const places = Array.from({ length: 4001 }, (_, i) => from + ((to - from) * (i + 0.37)) / 4002);
  return Math.max(...places.map((x) => Math.abs(segmentValue(table, x) - f(x))));
}

describe('a segment table', () => {
  it('agrees with a smooth function to the millionth at which it stops refining', () => {
    expect(worst(Math.sin, [0, 1, 3])).toBeLessThan(1e-6);
  });

  it('agrees with a function that starts and ends like a round overlap', () => {
    const overlap = (x: number): number => Math.max(0, x * (2 - x)) ** 1.5;
    expect(worst(overlap, [0, 2])).toBeLessThan(2e-6);
  });

  it('gains with the fourth power of the fineness', () => {
    const wave = (x: number): number => Math.sin(20 * x);
    const coarse = worst(wave, [0, 8]);
    const fine = worst(wave, [0, 2, 4, 6, 8]);
    expect(coarse / fine).toBeGreaterThan(100);
  });

  it('agrees on both sides of a kink that is a breakpoint', () => {
    expect(worst((x) => Math.abs(x - 1), [0, 1, 3])).toBeLessThan(1e-8);
  });

  it('is continuous at its breakpoints and exact there', () => {
    const table = segmentTable(Math.exp, [-1, 0, 0.5, 2]);
    for (const x of [0, 0.5]) {
      expect(segmentValue(table, x)).toBeCloseTo(Math.exp(x), 14);
      expect(segmentValue(table, x - 1e-12)).toBeCloseTo(segmentValue(table, x + 1e-12), 10);
    }
  });

  it('is zero outside and at its very ends', () => {
    const table = segmentTable(() => 1, [2, 3]);
    expect([1, 2, 3, 4, -Infinity, Infinity, NaN].map((x) => segmentValue(table, x))).toEqual([
      0, 0, 0, 0, 0, 0, 0,
    ]);
    expect(segmentValue(table, 2.0001)).toBeCloseTo(1, 12);
  });
});
