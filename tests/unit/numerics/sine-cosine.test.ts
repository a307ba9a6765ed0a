/** Sine and cosine together against the library's. */
import { expect, it } from 'vitest';
import { writeSineCosine } from '../../../src/numerics/sine-cosine.ts';

const sine = new Float64Array(2);
const cosine = new Float64Array(2);

it('agrees with the library over two turns either way', () => {
  let worst = 0;
  for (let angle = -13; angle < 13; angle += 0.00137) {
    writeSineCosine(angle, sine, cosine, 1);
    worst = Math.max(worst, Math.abs(sine[1]! - Math.sin(angle)), Math.abs(cosine[1]! - Math.cos(angle)));
  }
  // Mostly the rounding of the angle itself, 13 × 2^−53.
  expect(worst).toBeLessThan(2e-15);
});

it('is exact at zero', () => {
  writeSineCosine(0, sine, cosine, 0);
  expect([sine[0], cosine[0]]).toEqual([0, 1]);
});

it.each([NaN, Infinity, -Infinity])('has none for %d', (angle) => {
  writeSineCosine(angle, sine, cosine, 0);
  expect([sine[0], cosine[0]]).toEqual([NaN, NaN]);
});
