/**
 * What is known of several values that go together: a mean and a covariance, made better reading by reading.
 *
 * A reading z = h(x) with standard error σ, straightened to h ≈ h₀ + g·(x − x₀), changes mean m and covariance C to
 *
 *   K = C g/(gᵀC g + σ²),  m + K (z − h₀ − gᵀ(m − x₀)),  C − K gᵀC
 *
 * (Kalman's update for one reading; any text on estimation).
 */
import { square } from './elementary/whole-powers.ts';

export interface Knowledge {
  readonly mean: readonly number[];
  /** Row by row. */
  readonly covariance: readonly (readonly number[])[];
}

export interface StraightReading {
  /** g. */
  readonly slope: readonly number[];
  /** z − h₀ + gᵀx₀: what gᵀx would have to be. */
  readonly value: number;
  /** σ. */
  readonly error: number;
}

export const independent = (mean: readonly number[], deviations: readonly number[]): Knowledge => ({
  mean,
  covariance: deviations.map((own, i) => deviations.map((_, k) => (i === k ? square(own) : 0))),
});

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, own, i) => sum + own * b[i]!, 0);

/** gᵀC g: variance of a reading that has these slopes. */
export const varianceOf = (covariance: Knowledge['covariance'], slope: readonly number[]): number =>
  dot(
    slope,
    covariance.map((row) => dot(row, slope)),
  );

export function learned(before: Knowledge, readings: readonly StraightReading[]): Knowledge {
  return readings.reduce(({ mean, covariance }, { slope, value, error }) => {
    const along = covariance.map((row) => dot(row, slope));
    const whole = dot(along, slope) + square(error);
    const surprise = value - dot(slope, mean);
    return {
      mean: mean.map((own, i) => own + (along[i]! * surprise) / whole),
      covariance: covariance.map((row, i) => row.map((own, k) => own - (along[i]! * along[k]!) / whole)),
    };
  }, before);
}

export const trace = (covariance: Knowledge['covariance']): number =>
  covariance.reduce((sum, row, i) => sum + row[i]!, 0);
