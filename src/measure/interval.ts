/** 95 % intervals of what was fitted or averaged. */
import { exp } from '../numerics/elementary/exponential.ts';
import { student95 } from '../numerics/student.ts';
import type { LeastSquaresFit } from '../numerics/least-squares.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Half the 95 % interval of a fitted parameter. */
export function halfWidth(fit: LeastSquaresFit, parameter: number): number {
  const variance = fit.covariance[parameter]?.[parameter] ?? Infinity;
  return Number.isFinite(variance) ? student95(fit.degreesOfFreedom) * Math.sqrt(variance) : Infinity;
}

/** Around a positive value that is known to a share: v/eʰ to v·eʰ. */
export const relativeInterval = (value: number, share: number): Interval => ({
  low: value * exp(-share),
  high: value * exp(share),
});

export const symmetric = (value: number, half: number): Interval => ({
  low: value - half,
  high: value + half,
});

/** Standard error of one reading of an instrument that is read to the nearest step (uniform distribution). */
export const readingError = (step: number): number => step / Math.sqrt(12);
