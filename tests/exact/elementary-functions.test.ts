/**
 * Elementary functions of our own against values of 70 digits (elementary-functions/make-values.py says how they were made),
 * against `Math` over all magnitudes and at every odd end, and against identities that hold exactly.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exp, expm1 } from '../../src/numerics/elementary/exponential.ts';
import { acosh, atanh, sinh, tanh } from '../../src/numerics/elementary/hyperbolic.ts';
import { acos, asin, atan, atan2 } from '../../src/numerics/elementary/inverse-trigonometric.ts';
import { log, log10, log1p, log2 } from '../../src/numerics/elementary/logarithm.ts';
import { pow } from '../../src/numerics/elementary/power.ts';
import { cbrt, hypot } from '../../src/numerics/elementary/roots.ts';
import { cos, sin, tan } from '../../src/numerics/elementary/trigonometric.ts';
import { cube, square } from '../../src/numerics/elementary/whole-powers.ts';

type OfOne = (x: number) => number;
type OfTwo = (x: number, y: number) => number;

/** Largest error in units in the last place, as the files state it. */
const ofOne: Readonly<Record<string, readonly [own: OfOne, theirs: OfOne, bound: number]>> = {
  exp: [exp, Math.exp, 0.52],
  expm1: [expm1, Math.expm1, 1],
  log: [log, Math.log, 0.85],
  log1p: [log1p, Math.log1p, 1.2],
  log10: [log10, Math.log10, 0.51],
  log2: [log2, Math.log2, 0.51],
  sin: [sin, Math.sin, 0.85],
  cos: [cos, Math.cos, 0.85],
  tan: [tan, Math.tan, 2],
  asin: [asin, Math.asin, 0.7],
  acos: [acos, Math.acos, 1],
  atan: [atan, Math.atan, 1.3],
  sinh: [sinh, Math.sinh, 2],
  tanh: [tanh, Math.tanh, 2],
  acosh: [acosh, Math.acosh, 2.2],
  atanh: [atanh, Math.atanh, 1.6],
  cbrt: [cbrt, Math.cbrt, 0.7],
};
const ofTwo: Readonly<Record<string, readonly [own: OfTwo, theirs: OfTwo, bound: number]>> = {
  pow: [pow, Math.pow, 0.53],
  atan2: [atan2, Math.atan2, 1.1],
  hypot: [hypot, Math.hypot, 1.1],
};
const all: Readonly<Record<string, readonly [own: OfTwo, theirs: OfTwo, bound: number]>> = {
  ...ofOne,
  ...ofTwo,
};

/** `Math` is not right to the last digit either, and its hyperbolic functions and the cube root less so. */
const BOUND_OF_MATH = 2;

/** Distance of two neighbouring doubles there. */
function unit(value: number): number {
  const size = Math.abs(value);
  return size < 2 ** -1021 ? 2 ** -1074 : 2 ** (Math.floor(Math.log2(size * (1 - 2 ** -53))) - 52);
}

const rows = readFileSync(new URL('elementary-functions/values.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));

/** Below it the digits run out, and a last place is worth more than a digit. */
const withAllDigits = (value: number): boolean => Math.abs(value) > 2.3e-308;

describe.each(Object.entries(all))('%s', (name, [own, theirs, bound]) => {
  const known = rows.filter(([of]) => of === name);

  it(`is within ${bound} units in the last place of the exact value`, () => {
    expect(known.length).toBeGreaterThan(7);
    for (const [, x, y, value, rest] of known) {
      const found = own(Number(x), Number(y));
      const error = Math.abs(found - Number(value) - Number(rest)) / unit(Number(value));
      expect(error, `${x}, ${y}: ${found}`).toBeLessThan(withAllDigits(Number(value)) ? bound : 1);
    }
  });

  const odd = [
    0,
    1,
    0.5,
    2,
    3,
    1e-310,
    5e-324,
    2 ** -1022,
    1e308,
    Number.MAX_VALUE,
    2 ** 53,
    709.8,
    745.2,
    Infinity,
  ];
  const ends = [...odd, ...odd.map((end) => -end), NaN];
  const pairs = ends.flatMap((x): [number, number][] =>
    own.length === 1 ? [[x, 0]] : ends.map((y) => [x, y]),
  );
  const near = (x: number, y: number): void => {
    const [found, wanted] = [own(x, y), theirs(x, y)];
    if (!Number.isFinite(wanted) || wanted === 0) expect(found, `${x}, ${y}`).toBe(wanted);
    else
      expect(Math.abs(found - wanted) / unit(wanted), `${x}, ${y}`).toBeLessThanOrEqual(
        BOUND_OF_MATH + bound,
      );
  };
  /** Angles that nobody can tell are reckoned by our own rule. */
  const tellable = (x: number): boolean =>
    !/^(sin|cos|tan)$/u.test(name) || !(Math.abs(x) > 1e9) || x === Infinity || x === -Infinity;

  it('ends as that of Math', () => {
    for (const [x, y] of pairs) if (tellable(x)) near(x, y);
  });

  it('is near that of Math for numbers of all magnitudes', () => {
    const any = fc.double({ noNaN: true });
    const usual = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const small = fc.double({ min: -2, max: 2, noNaN: true });
    const argument = fc.oneof(any, usual, small);
    fc.assert(
      fc.property(argument, argument, (x, y) => {
        if (tellable(x)) near(x, y);
      }),
      { numRuns: 2000, seed: 1 },
    );
  });
});

describe('exactly', () => {
  const numbers = fc.double({ min: -700, max: 700, noNaN: true });
  const always = (own: OfOne, other: OfOne): void => {
    const check = (x: number): void => {
      expect(own(x), `${x}`).toBe(other(x));
    };
    fc.assert(fc.property(numbers, check), { numRuns: 1000, seed: 2 });
  };

  it('powers that are doubles', () => {
    for (let n = -1074; n <= 1023; n += 1) expect(log2(pow(2, n))).toBe(n);
    for (let n = 0; n <= 22; n += 1) expect(pow(10, n)).toBe(Number(`1e${n}`));
    for (let n = -307; n <= 308; n += 1) expect(log10(Number(`1e${n}`))).toBe(n);
    for (let n = -200; n <= 200; n += 1) {
      expect(cbrt(n * n * n)).toBe(n);
      expect(pow(n, 3)).toBe(cube(n));
      expect(pow(n, 2)).toBe(square(n));
    }
  });

  it('what is odd or even', () => {
    for (const odd of [sin, tan, atan, asin, sinh, tanh, cbrt]) always(odd, (x) => -odd(-x));
    always(cos, (x) => cos(-x));
  });

  it('what grows never falls, above all where one piece of a table ends and the next begins', () => {
    const rising: [OfOne, number, number][] = [
      [exp, -3, 3],
      [log, 0.4, 3],
      [atan, -3, 3],
      [asin, -0.99, 0.99],
      [tanh, -3, 3],
      [sinh, -3, 3],
      [expm1, -1, 1],
    ];
    for (const [own, from, to] of rising) {
      for (let i = 0; i <= 768; i += 1) {
        // The next double but a few, on both sides of each 256th.
        const x = from + ((to - from) * i) / 768;
        const least = 4 * unit(x);
        expect(own(x + least)).toBeGreaterThanOrEqual(own(x - least));
      }
    }
  });

  it('angles beyond a thousand million go by the double nearest to a turn', () => {
    for (const x of [1.5e9, 1e15, 1e22, 1e300]) {
      expect(sin(x)).toBe(sin(x % (2 * Math.PI)));
      expect(cos(-x)).toBe(cos(x % (2 * Math.PI)));
    }
  });
});
