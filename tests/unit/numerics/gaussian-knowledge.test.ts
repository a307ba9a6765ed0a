/** Learning reading by reading against doing it all at once. */
import { describe, it } from 'vitest';
import { independent, learned, trace, varianceOf } from '../../../src/numerics/gaussian-knowledge.ts';
import { leastSquares } from '../../../src/numerics/least-squares.ts';
import { expectWithin } from '../../support/expect-within.ts';

const before = independent([1, -1], [2, 3]);
const readings = [
  { slope: [1, 1], value: 1.5, error: 0.3 },
  { slope: [2, -1], value: 2.2, error: 0.5 },
  { slope: [0.3, 1], value: 0.4, error: 0.2 },
];

describe('learned', () => {
  it('comes to what least squares makes of readings and prior together', () => {
    const after = learned(before, readings);
    const fit = leastSquares({
      start: [0, 0],
      leastGain: 1e-12,
      residuals: ([a = 0, b = 0]) => [
        ...readings.map(({ slope, value, error }) => (slope[0]! * a + slope[1]! * b - value) / error),
        (a - 1) / 2,
        (b + 1) / 3,
      ],
    });
    after.mean.forEach((value, i) => {
      expectWithin(value, fit.parameters[i]!, 1e-5);
    });
    expectWithin(after.covariance[0]![0]! * fit.excessScatter ** 2, fit.covariance[0]![0]!, 1e-5);
    expectWithin(after.covariance[0]![1]! * fit.excessScatter ** 2, fit.covariance[0]![1]!, 1e-5);
  });

  it('does not care for the order', () => {
    const [forth, back] = [learned(before, readings), learned(before, readings.toReversed())];
    expectWithin(forth.mean[0]!, back.mean[0]!, 1e-12);
    expectWithin(trace(forth.covariance), trace(back.covariance), 1e-12);
  });

  it('is half as sure again for two like readings of one value', () => {
    const one = { slope: [1], value: 5, error: 1 };
    const after = learned(independent([0], [1e6]), [one, one]);
    expectWithin(after.covariance[0]![0]!, 0.5, 1e-6);
    expectWithin(after.mean[0]!, 5, 1e-6);
    expectWithin(varianceOf(after.covariance, [2]), 2, 1e-6);
  });
});
