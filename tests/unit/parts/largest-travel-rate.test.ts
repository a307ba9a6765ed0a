/** The bound on how fast a crank moves its piston: never passed, and never far away. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { largestTravelRate, pistonTravelRate, type CrankTrain } from '../../../src/parts/crank-train.ts';

const RADIUS = 0.03;

function mostFound(crank: CrankTrain): number {
  const angles = Array.from({ length: 3600 }, (_, i) => (i * Math.PI) / 1800);
  return Math.max(
    ...angles.map((angle) => Math.abs(pistonTravelRate(crank, Math.sin(angle), Math.cos(angle)))),
  );
}

it.each([
  ['a connecting rod', (length: number): CrankTrain => ({ crankRadius: RADIUS, rodLength: length })],
  [
    'a cylinder that rocks',
    (length: number): CrankTrain => ({
      crankRadius: RADIUS,
      rodLength: length,
      oscillating: { crankRadius: RADIUS, trunnionDistance: length },
    }),
  ],
])('with %s', (_which, crankOf) => {
  fc.assert(
    fc.property(fc.double({ min: 1.5 * RADIUS, max: 10 * RADIUS, noNaN: true }), (length) => {
      const crank = crankOf(length);
      const most = mostFound(crank);
      expect(largestTravelRate(crank)).toBeGreaterThanOrEqual(most);
      expect(largestTravelRate(crank)).toBeLessThan(1.2 * most);
    }),
    { numRuns: 20 },
  );
});
