/** Tabulated powers against the library's. */
import { expect, it } from 'vitest';
import { powerFrom, powerTable } from '../../../src/numerics/power-table.ts';

const places = (low: number): number[] =>
  Array.from({ length: 1001 }, (_, i) => low + ((1 - low) * i) / 1000);

it.each([
  [1 / 1.4, 0.528],
  [0.6, 0.487],
  [1, 0.4],
])('x^%d from %d up agrees with the library', (exponent, low) => {
  const table = powerTable(exponent, low);
  const off = places(low).map((x) => Math.abs(powerFrom(table, x) - x ** exponent));
  expect(Math.max(...off)).toBeLessThan(1e-11);
});

it('is exactly 1 at 1', () => {
  expect(powerFrom(powerTable(1 / 1.4, 0.528), 1)).toBe(1);
});
