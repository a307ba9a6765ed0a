/**
 * Roots, minima and evenly filled cubes. The expected numbers are those of SciPy 1.10.1 for the same tasks:
 * `optimize.brentq`, `minimize_scalar(method='bounded')`, `minimize(method='Nelder-Mead', bounds=…)`, `stats.qmc.Sobol`.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumBetween } from '../../../src/numerics/minimum.ts';
import { nelderMead, type SimplexTask } from '../../../src/numerics/nelder-mead.ts';
import { root } from '../../../src/numerics/root.ts';
import { searched, searchedLater } from '../../../src/numerics/search.ts';
import { mostSobolDimensions, sobolPoints } from '../../../src/numerics/sobol.ts';

const rootOf = (f: (x: number) => number, a: number, b: number, tolerance = 1e-13) =>
  searched(root({ a, b, valueAtA: f(a), valueAtB: f(b) }, tolerance), f);

/** How often a function is asked. */
function counted<P>(f: (at: P) => number) {
  const calls = { count: 0 };
  return { calls, f: (at: P) => ((calls.count += 1), f(at)) };
}

describe('a root', () => {
  it.each([
    [(x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.094551481542327],
    [(x: number) => Math.exp(-x) - x, 0, 1, 0.5671432904097838],
    [(x: number) => Math.exp(-x) - x, 1, 0, 0.5671432904097838],
  ])('%s', (f, a, b, expected) => {
    expect(rootOf(f, a, b).near).toBeCloseTo(expected, 12);
  });

  it('takes few steps where the function is smooth', () => {
    const { f, calls } = counted((x: number) => x ** 3 - 2 * x - 5);
    searched(root({ a: 2, b: 3, valueAtA: -1, valueAtB: 16 }, 1e-12), f);
    expect(calls.count).toBeLessThan(10);
  });

  it('closes in on a jump from both sides, wherever it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.1, max: 9, noNaN: true }),
        (at, high) => {
          const f = (x: number): number => (x < at ? high + x : -1);
          const { near, far } = rootOf(f, 0, 1, 1e-6);
          expect(Math.abs(near - far)).toBeLessThanOrEqual(1.01e-6);
          expect(Math.min(near, far)).toBeLessThanOrEqual(at);
          expect(Math.max(near, far)).toBeGreaterThanOrEqual(at);
          expect(f(near) > 0).not.toBe(f(far) > 0);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('does not mind who answers', async () => {
    const f = (x: number): number => x - 0.25;
    const found = await searchedLater(root({ a: 0, b: 1, valueAtA: -0.25, valueAtB: 0.75 }, 1e-9), (x) =>
      Promise.resolve(f(x)),
    );
    expect(found.near).toBeCloseTo(0.25, 9);
  });
});

describe('a minimum between two bounds', () => {
  it.each([
    ['smooth, at a bound', (x: number) => (x - 2) * Math.exp(-x), 1e-9, [0, 1], 0],
    ['with a kink', (x: number) => Math.abs(x - 0.7) + 0.1 * x * x, 1e-9, [-1, 3], 0.7],
    ['at the upper bound', (x: number) => -x, 1e-9, [0, 1], 1],
  ] as const)('%s', (_name, f, tolerance, [low, high], expected) => {
    expect(searched(minimumBetween(low, high, tolerance), f).at).toBeCloseTo(expected, 6);
  });

  it('asks no more often than SciPy, 32 times, for the kink', () => {
    const { f, calls } = counted((x: number) => Math.abs(x - 0.7) + 0.1 * x * x);
    searched(minimumBetween(-1, 3, 1e-9), f);
    expect(calls.count).toBeLessThanOrEqual(45);
  });
});

const rosenbrock = ([x, y]: readonly number[]): number => (1 - x!) ** 2 + 100 * (y! - x! * x!) ** 2;
const bowl = (x: readonly number[]): number =>
  x.reduce((sum, own, i) => sum + (i + 1) * (own - 0.1 * (i + 1)) ** 2, 0.5 * x[0]! * x[3]!);

function lowest(
  f: (x: readonly number[]) => number,
  task: Partial<SimplexTask> & Pick<SimplexTask, 'start' | 'low' | 'high'>,
) {
  const step = task.start.map((_, i) => 0.1 * (task.high[i]! - task.low[i]!));
  return searched(nelderMead({ step, tolerance: 1e-9, mostPoints: 4000, ...task }), f);
}

describe('the lowest point by a simplex', () => {
  it('finds the end of the banana valley', () => {
    const found = lowest(rosenbrock, { start: [-1.2, 1], low: [-5, -5], high: [5, 5] });
    expect(found.closed).toBe(true);
    expect(found.at[0]).toBeCloseTo(1, 6);
    expect(found.at[1]).toBeCloseTo(1, 6);
  });

  it('stops on a bound, where SciPy does', () => {
    const found = lowest(rosenbrock, { start: [-1.2, 1], low: [-2, -2], high: [0.5, 2] });
    expect(found.at[0]).toBeCloseTo(0.5, 7);
    expect(found.at[1]).toBeCloseTo(0.25, 7);
  });

  it('finds a minimum in four dimensions with one on its bound, where SciPy does', () => {
    const found = lowest(bowl, {
      start: [0.2, 0.2, 0.2, 0.2],
      low: [0, 0, 0, 0],
      high: [0.35, 0.35, 0.35, 0.35],
    });
    [0.0125, 0.2, 0.3, 0.35].forEach((x, i) => expect(found.at[i]).toBeCloseTo(x, 5));
    expect(found.value).toBeCloseTo(0.01984375, 9);
  });

  it('never asks beyond a bound, nor more often than allowed', () => {
    const { f, calls } = counted((x: readonly number[]) => {
      x.forEach((own) => expect(own >= 0 && own <= 0.35).toBe(true));
      return -bowl(x);
    });
    const found = lowest(f, {
      start: [0.3, 0.3, 0.3, 0.3],
      low: [0, 0, 0, 0],
      high: [0.35, 0.35, 0.35, 0.35],
      tolerance: 0,
      mostPoints: 60,
    });
    expect(found.closed).toBe(false);
    expect(calls.count).toBeLessThan(67);
  });
});

describe("Sobol's points", () => {
  it('are those of SciPy in all 16 dimensions', () => {
    const point = sobolPoints(mostSobolDimensions);
    const in1024ths = (n: number): number[] => point(n).map((x) => Math.floor(x * 1024));
    expect(in1024ths(100)).toEqual([
      424, 264, 792, 744, 904, 760, 24, 488, 648, 712, 472, 696, 488, 872, 328, 504,
    ]);
    expect(in1024ths(777)).toEqual([
      709, 959, 167, 281, 651, 365, 195, 781, 357, 331, 763, 713, 393, 485, 583, 527,
    ]);
    expect(in1024ths(1023)).toEqual([
      1, 771, 627, 149, 191, 449, 143, 633, 353, 871, 695, 37, 133, 681, 371, 475,
    ]);
  });

  it('put one into every 64th of every axis, shifted or not', () => {
    for (const shifts of [[], [123456789, 3987654321, 77]]) {
      const point = sobolPoints(3, shifts);
      const points = Array.from({ length: 64 }, (_, n) => point(n));
      for (const axis of [0, 1, 2])
        expect(new Set(points.map((p) => Math.floor(p[axis]! * 64))).size).toBe(64);
    }
  });
});
