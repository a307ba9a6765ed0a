import { expect, test } from 'vitest';
import { thinnedRows } from '../../../src/report/charts/thinned-rows.ts';
import { roundTicks } from '../../../src/report/svg/scale.ts';

test('a short trace is drawn whole', () => {
  expect(thinnedRows([3, 1, 2])).toEqual([0, 1, 2]);
});

test('a long trace keeps its ends and every peak, in order', () => {
  const values = Array.from({ length: 50_000 }, (_, i) => Math.sin(i / 7));
  values[12_345] = 9;
  values[23_456] = -9;
  const rows = thinnedRows(values);
  expect(rows.length).toBeLessThanOrEqual(1200);
  expect(rows).toEqual(expect.arrayContaining([0, 12_345, 23_456, 49_999]));
  expect(rows).toEqual([...new Set(rows)].sort((a, b) => a - b));
});

test.each([
  [0, 10, 5, [0, 2, 4, 6, 8, 10]],
  [-0.13, 0.52, 6, [0, 0.2, 0.4]],
  [-1, 1, 4, [-1, -0.5, 0, 0.5, 1]],
])('round ticks from %s to %s', (low, high, count, ticks) => {
  expect(roundTicks(low, high, count)).toEqual(ticks);
});
