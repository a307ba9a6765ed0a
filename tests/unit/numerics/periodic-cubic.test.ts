/** A periodic monotone cubic: through its points, over none of them, smooth across every joint and from turn to turn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { periodicCubic } from '../../../src/numerics/periodic-cubic.ts';

const TURN = 2 * Math.PI;

/** Points one period long, unevenly spaced, the last one the first again. */
const points = fc
  .array(fc.tuple(fc.double({ min: 0.2, max: 1, noNaN: true }), fc.integer({ min: 0, max: 6 })), {
    minLength: 4,
    maxLength: 20,
  })
  .map((steps) => {
    const x = [0];
    for (const [step] of steps) x.push(x.at(-1)! + step);
    const y = steps.map(([, value]) => value);
    return { x, y: [...y, y[0]!] };
  });

const checked = (property: (own: { x: number[]; y: number[] }) => void): void => {
  fc.assert(fc.property(points, property), { seed: 1851, numRuns: 200 });
};

describe('a periodic cubic', () => {
  it('passes through its points, in every period', () => {
    checked(({ x, y }) => {
      const curve = periodicCubic(x, y);
      const period = x.at(-1)!;
      for (const [i, at] of x.entries())
        for (const turns of [-2, 0, 3]) expect(curve.value(at + turns * period)).toBeCloseTo(y[i]!, 9);
    });
  });

  it('stays between neighbouring points', () => {
    checked(({ x, y }) => {
      const curve = periodicCubic(x, y);
      for (const [i, left] of y.slice(0, -1).entries())
        for (const share of [0.03, 0.2, 0.5, 0.8, 0.97]) {
          const value = curve.value(x[i]! + share * (x[i + 1]! - x[i]!));
          expect(value).toBeGreaterThanOrEqual(Math.min(left, y[i + 1]!) - 1e-12);
          expect(value).toBeLessThanOrEqual(Math.max(left, y[i + 1]!) + 1e-12);
        }
    });
  });

  it('is level between equal values, to the last bit when they are zero', () => {
    const curve = periodicCubic([0, 1, 2, 3, 4], [0, 0, 5, 5, 0]);
    expect([0.1, 0.5, 0.9].map((at) => curve.value(at))).toEqual([0, 0, 0]);
    for (const at of [2.1, 2.5, 2.9]) expect(curve.value(at)).toBe(5);
  });

  it('has one slope on both sides of each point, also where the period closes', () => {
    const h = 1e-6;
    checked(({ x, y }) => {
      const curve = periodicCubic(x, y);
      for (const at of x) {
        const left = (curve.value(at) - curve.value(at - h)) / h;
        const right = (curve.value(at + h) - curve.value(at)) / h;
        // Curvature is at most some 6 × 6/0.2².
        expect(Math.abs(left - right)).toBeLessThan(5e-3);
      }
    });
  });

  it('comes closer to a smooth curve with the square of the spacing or better', () => {
    const f = (x: number): number => 2 + Math.sin(x) + 0.3 * Math.cos(2 * x);
    const error = (n: number): number => {
      const x = Array.from({ length: n + 1 }, (_, i) => (TURN * i) / n);
      const curve = periodicCubic(x, x.map(f));
      return Math.max(
        ...Array.from({ length: 997 }, (_, i) => Math.abs(curve.value(i * 0.0063) - f(i * 0.0063))),
      );
    };
    expect(error(72)).toBeLessThan(2e-3);
    expect(error(144)).toBeLessThan(error(72) / 3);
  });
});
