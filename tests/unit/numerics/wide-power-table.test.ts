/** Powers of any size from a table against those reckoned. */
import { expect, it } from 'vitest';
import { pow } from '../../../src/numerics/elementary/power.ts';
import { widePowerFrom, widePowerTable } from '../../../src/numerics/wide-power-table.ts';

it.each([0.8, 0.6, 1.25, -0.5])('x^%d agrees for very small and very large numbers', (exponent) => {
  const table = widePowerTable(exponent);
  for (let log = -240; log <= 240; log += 0.37) {
    const x = pow(10, log);
    expect(Math.abs(widePowerFrom(table, x) / pow(x, exponent) - 1)).toBeLessThan(1e-10);
  }
});

it('goes on where one octave ends and the next begins', () => {
  const table = widePowerTable(0.8);
  for (const end of [0.25, 1, 2, 1024]) {
    expect(widePowerFrom(table, end) / pow(end, 0.8)).toBeCloseTo(1, 14);
    expect(widePowerFrom(table, end * (1 - 2 ** -52)) / pow(end, 0.8)).toBeCloseTo(1, 14);
  }
});

it('ends as a power does', () => {
  const table = widePowerTable(0.8);
  expect([0, Infinity, NaN, -1].map((x) => widePowerFrom(table, x))).toEqual([0, Infinity, NaN, NaN]);
});
