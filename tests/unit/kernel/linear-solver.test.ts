import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MATRIX, SCRATCH } from '../../../src/kernel/step-header.ts';
import { stepImage } from '../../../src/numerics/step-image.ts';
import { noLaw, seatedCompiled, seatedPlain } from '../../support/both-kernels.ts';

describe.each([
  ['plain', seatedPlain],
  ['compiled', seatedCompiled],
])('a linear system of a step, %s', (_kind, seated) => {
  function solved(rows: readonly (readonly number[])[], b: readonly number[]): Float64Array | undefined {
    const dimension = rows.length;
    const tolerances = { relative: 1e-3, absolute: new Float64Array(dimension).fill(1) };
    const { words } = stepImage({ dimension, derivative: noLaw }, tolerances);
    const { functions, doubles, integers, step } = seated({ step: words });
    const wordOf = (name: number): number => step + integers[2 * (step + name)]!;
    doubles.set(rows.flat(), wordOf(MATRIX));
    const x = doubles.subarray(wordOf(SCRATCH), wordOf(SCRATCH) + dimension);
    x.set(b);
    if (!functions.factorise()) return undefined;
    functions.solve(wordOf(SCRATCH));
    return x.slice();
  }

  it('is solved', () => {
    expect([
      ...solved(
        [
          [2, 1],
          [1, 3],
        ],
        [5, 10],
      )!,
    ]).toEqual([1, 3]);
  });

  it('may have zeros on its diagonal', () => {
    const x = solved(
      [
        [0, 1, 0],
        [0, 0, 2],
        [4, 0, 0],
      ],
      [5, 6, 8],
    );
    expect([...x!]).toEqual([2, 5, 3]);
  });

  it('keeps its figures when a pivot is tiny', () => {
    const [x, y] = solved(
      [
        [1e-20, 1],
        [1, 1],
      ],
      [1, 2],
    )!;
    expect(x).toBeCloseTo(1, 14);
    expect(y).toBeCloseTo(1, 14);
  });

  it('keeps its figures when its rows are in very different units', () => {
    const rows = [
      [1e-3, 1e3],
      [1e-9, 2e-9],
    ];
    const [x, y] = solved(rows, [1e-3 + 1e3, 3e-9])!;
    expect(x).toBeCloseTo(1, 14);
    expect(y).toBeCloseTo(1, 14);
  });

  it('obeys a leading row that gives its unknown outright to the last bit', () => {
    const [x] = solved(
      [
        [1, 0, 0],
        [7e5, 3, 1],
        [-2e9, 1, 0.3],
      ],
      [0.1, 0.7, 0.9],
    )!;
    expect(x).toBe(0.1);
  });

  it.each([
    [
      'dependent rows',
      [
        [1, 2],
        [2, 4],
      ],
    ],
    [
      'a row of zeros',
      [
        [0, 0],
        [1, 1],
      ],
    ],
    [
      'an entry that is no number',
      [
        [NaN, 0],
        [0, 1],
      ],
    ],
    [
      'an infinite entry',
      [
        [1, 0],
        [0, Infinity],
      ],
    ],
  ])('is refused for %s', (_why, rows) => {
    expect(solved(rows, [1, 1])).toBeUndefined();
  });

  it('of any size is solved to rounding when its diagonal is heavy', () => {
    const entries = fc.double({ min: -1, max: 1, noNaN: true });
    const systems = fc.integer({ min: 1, max: 40 }).chain((n) =>
      fc.record({
        rows: fc.array(fc.array(entries, { minLength: n, maxLength: n }), { minLength: n, maxLength: n }),
        x: fc.array(entries, { minLength: n, maxLength: n }),
        shift: fc.integer({ min: 0, max: n - 1 }),
      }),
    );
    const keeps = fc.property(systems, ({ rows, x, shift }) => {
      const n = x.length;
      // Heavy off the diagonal by `shift` columns, so that rows have to change places.
      const matrix = rows.map((row, i) => row.map((value, j) => (j === (i + shift) % n ? 2 * n : value)));
      const b = matrix.map((row) => row.reduce((sum, value, j) => sum + value * x[j]!, 0));
      const found = solved(matrix, b)!;
      for (const [j, value] of x.entries()) expect(Math.abs(found[j]! - value)).toBeLessThan(1e-13);
    });
    fc.assert(keeps, { numRuns: 60, seed: 5 });
  });
});
