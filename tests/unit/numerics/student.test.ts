/** The factor for a 95 % interval against the table printed in every text on statistics (from memory). */
import { expect, it } from 'vitest';
import { student95 } from '../../../src/numerics/student.ts';

it.each([
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [10, 2.228],
  [20, 2.086],
  [30, 2.042],
  [120, 1.98],
  [1e9, 1.96],
])('%d degrees of freedom: %d', (degrees, factor) => {
  expect(Math.abs(student95(degrees) / factor - 1)).toBeLessThan(1.5e-3);
});

it('knows no bound without a degree of freedom', () => {
  expect(student95(0)).toBe(Infinity);
});
