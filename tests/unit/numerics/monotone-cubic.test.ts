/** The curve through points that overshoots nowhere; values of SciPy 1.17.1, PchipInterpolator, which has the same rules. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { monotoneCubic } from '../../../src/numerics/monotone-cubic.ts';

describe('a monotone cubic', () => {
  it.each([
    [0.25, 0.05895833333333335],
    [0.5, 0.1505555555555556],
    [1.7, 1.1334617283950617],
    [2.6, 1.9296],
    [4, 2],
    [5.3, 2.1748571428571424],
    [6.2, 4.139428571428572],
  ])('through a rising row is at %f where SciPy has it', (x, y) => {
    const curve = monotoneCubic([0, 1, 2.5, 3, 5, 6.5], [0, 0.4, 1.9, 2, 2, 5]);
    expect(curve(x)).toBeCloseTo(y, 13);
  });

  it.each([
    [0.3, 1.2605],
    [0.9, 2.9535],
    [1.5, 2.984375],
    [2.9, 2.1426250000000002],
  ])('over a peak is at %f where SciPy has it', (x, y) => {
    expect(monotoneCubic([0, 1, 3], [0, 3, 2])(x)).toBeCloseTo(y, 13);
  });

  it('is a straight line through two points, and level through one and beyond the ends', () => {
    const line = monotoneCubic([1, 3], [2, 6]);
    expect([line(0), line(1), line(1.5), line(3), line(9)]).toEqual([2, 2, 3, 6, 6]);
    expect(monotoneCubic([1], [4])(7)).toBe(4);
  });

  it('passes through its points and never leaves the range of its neighbours', () => {
    const rows = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      {
        minLength: 2,
        maxLength: 9,
      },
    );
    fc.assert(
      fc.property(rows, fc.double({ min: 0, max: 1, noNaN: true }), (steps, share) => {
        let at = 0;
        const x = steps.map(([step]) => (at += step));
        const y = steps.map(([, value]) => value);
        const curve = monotoneCubic(x, y);
        for (let i = 0; i + 1 < x.length; i += 1) {
          expect(curve(x[i]!)).toBeCloseTo(y[i]!, 9);
          const value = curve(x[i]! + share * (x[i + 1]! - x[i]!));
          expect(value).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-9);
          expect(value).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-9);
        }
      }),
      { numRuns: 200 },
    );
  });
});
