/** Integrals against their closed forms. */
import { describe, expect, it } from 'vitest';
import { integrals } from '../../../src/numerics/gauss-kronrod.ts';
import { expectWithin } from '../../support/expect-within.ts';

const integral = (f: (x: number) => number, from: number, to: number, mostPanels?: number): number =>
  integrals(
    (x, out) => {
      out[0] = f(x);
    },
    1,
    [from, to],
    mostPanels,
  )[0]!;

describe('one panel', () => {
  it('is exact for powers up to the 22nd, which fifteen places can be (any text on quadrature)', () => {
    for (let n = 0; n <= 22; n += 1)
      expectWithin(
        integral((x) => x ** n, 0, 1, 1),
        1 / (n + 1),
        1e-14,
      );
    expect(Math.abs(integral((x) => x ** 26, -1, 1, 1) * 13.5 - 1)).toBeGreaterThan(1e-10);
  });
});

describe('an integral', () => {
  it('is found beside a pole that lies just beyond the end', () => {
    for (const gap of [1e-3, 1e-6, 1e-12])
      expectWithin(
        integral((x) => 1 / (x + gap), 0, 1),
        Math.log((1 + gap) / gap),
        1e-11,
      );
  });

  it('is found over a bend, and backwards', () => {
    expectWithin(
      integral((x) => Math.abs(x - 0.3), 0, 1),
      (0.09 + 0.49) / 2,
      1e-11,
    );
    expectWithin(
      integral((x) => Math.exp(x), 1, 0),
      1 - Math.E,
      1e-14,
    );
  });

  it('is infinite where the density is', () => {
    expect(integral((x) => (x > 0.3 && x < 0.5 ? Infinity : 1), 0, 1)).toBe(Infinity);
  });

  it('takes other quantities along', () => {
    const sums = integrals(
      (x, out) => {
        out[0] = 1 / (x + 1e-4);
        out[1] = x;
      },
      2,
      [0, 1],
    );
    expectWithin(sums[0]!, Math.log(1.0001e4), 1e-11);
    expectWithin(sums[1]!, 0.5, 1e-14);
  });
});
