import { expect } from 'vitest';

/** Expects a number within a share of another: 0.01 for one per cent either way. */
export function expectWithin(received: number, expected: number, share: number): void {
  const deviation = Math.abs(received / expected - 1);
  expect(deviation, `received ${received}, expected ${expected} to ${100 * share} %`).toBeLessThanOrEqual(
    share,
  );
}
