/** The bar goes by a clock that cannot be set: a wall clock that jumps back leaves rate and time left alone. */
import { afterEach, expect, it, vi } from 'vitest';
import { progressBar } from '../../../src/cli/studies/progress.ts';

const { isTTY } = process.stderr;
afterEach(() => {
  process.stderr.isTTY = isTTY;
  vi.restoreAllMocks();
});

it('shows rate and time left while the clock is set back', () => {
  let shown = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    shown += String(text);
    return true;
  });
  const clock = vi.spyOn(Date, 'now');
  const stopwatch = vi.spyOn(performance, 'now').mockReturnValue(0);
  process.stderr.isTTY = true;
  const progress = progressBar(100, 10, false);
  clock.mockReturnValue(1e12 - 1e9);
  stopwatch.mockReturnValue(10_000);
  progress.advance(30);
  progress.end();
  expect(shown).toContain('30 of 100 engines · 2.0 a second · 35 s left');
  expect(shown).not.toMatch(/NaN|Infinity|-\d/u);
});
