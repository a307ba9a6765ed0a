/** Least squares against certified and exactly known regressions. */
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../src/numerics/least-squares.ts';
import { expectWithin } from '../../support/expect-within.ts';

/** NIST Statistical Reference Datasets, Misra1a (data seen in a copy of misra1a.dat; certified values from memory). */
const misra = [
  [77.6, 10.07],
  [114.9, 14.73],
  [141.1, 17.94],
  [190.8, 23.93],
  [239.9, 29.61],
  [289, 35.18],
  [332.8, 40.02],
  [378.4, 44.82],
  [434.8, 50.76],
  [477.3, 55.05],
  [536.8, 61.01],
  [593.1, 66.4],
  [689.1, 75.47],
  [760, 81.78],
] as const;

describe('Misra1a, y = b₁ (1 − exp(−b₂ x))', () => {
  // Their first start, 500 and 1e-4; in units that make both parameters of order one.
  const fit = leastSquares({
    start: [5, 1],
    leastGain: 1e-12,
    residuals: ([b1 = 0, b2 = 0]) => misra.map(([x, y]) => 100 * b1 * (1 - Math.exp(-1e-4 * b2 * x)) - y),
  });

  it('finds the certified parameters and residual sum of squares', () => {
    expect(fit.converged).toBe(true);
    expectWithin(fit.parameters[0]! * 100, 2.3894212918e2, 1e-6);
    expectWithin(fit.parameters[1]! * 1e-4, 5.5015643181e-4, 1e-6);
    expectWithin(fit.sumOfSquares, 1.2455138894e-1, 1e-6);
  });

  it('finds the certified standard errors', () => {
    // The readings were said to be good to 1 and are better, so their own scatter is not taken; put it in by hand.
    const scatter = Math.sqrt(fit.sumOfSquares / fit.degreesOfFreedom);
    expect(fit.excessScatter).toBe(1);
    expectWithin(Math.sqrt(fit.covariance[0]![0]!) * scatter * 100, 2.7070075241, 1e-4);
    expectWithin(Math.sqrt(fit.covariance[1]![1]!) * scatter * 1e-4, 7.2668688436e-6, 1e-4);
  });
});

describe('a straight line', () => {
  const x = [0, 1, 2, 3, 4];
  const line = (y: readonly number[]) =>
    leastSquares({ start: [0, 0], residuals: ([a = 0, b = 0]) => x.map((xi, i) => a + b * xi - y[i]!) });

  it('widens what scatters more than it was said to, and only that', () => {
    const quiet = line([0, 1, 2, 3, 4]);
    const loud = line([3, -2, 5, 0, 7]);
    expect(quiet.excessScatter).toBe(1);
    expectWithin(loud.excessScatter, Math.sqrt(loud.sumOfSquares / 3), 1e-9);
    // (JᵀJ)⁻¹ of a line through 0…4: variance of the slope 1/Σ(x − x̄)² = 1/10.
    expectWithin(quiet.covariance[1]![1]!, 0.1, 1e-6);
    expectWithin(loud.covariance[1]![1]!, 0.1 * loud.excessScatter ** 2, 1e-6);
    // Correlation of intercept and slope: −x̄/√(mean of x²) = −2/√6.
    expectWithin(quiet.correlation[0]![1]!, -2 / Math.sqrt(6), 1e-6);
  });
});

describe('parameters that only their sum is known of', () => {
  const fit = leastSquares({
    start: [0, 0],
    residuals: ([a = 0, b = 0]) => [1, 2, 3].map((x) => (a + b) * x - 4 * x),
  });

  it('says so by the condition number and the direction that changes nothing', () => {
    expect(fit.conditionNumber).toBeGreaterThan(1e6);
    expectWithin(fit.weakestDirection[0]! / fit.weakestDirection[1]!, -1, 1e-6);
    expectWithin(fit.parameters[0]! + fit.parameters[1]!, 4, 1e-4);
  });

  it('leaves what the readings do not touch unbounded', () => {
    const blind = leastSquares({ start: [1, 1], residuals: ([a = 0]) => [a - 1, a - 3] });
    expect(blind.covariance[1]![1]).toBe(Infinity);
    expect(blind.parameters[0]).toBeCloseTo(2, 6);
  });
});

it('keeps to its limits and stops by its count', () => {
  const residuals = ([a = 0]: readonly number[]): number[] => [a - 5, a - 5];
  expect(leastSquares({ start: [0], lower: [-1], upper: [2], residuals }).parameters[0]).toBe(2);
  const short = leastSquares({
    start: [10],
    mostIterations: 1,
    residuals: ([a = 0]) => [Math.exp(a), a],
  });
  expect(short.converged).toBe(false);
});
