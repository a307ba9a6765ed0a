/**
 * How fast a receiver fills: p(t) = a + b t + c t², least squares. At the temperature T of the air inside, the compressor
 * takes in per second, as air of the room at p₀ and T₀,
 *
 *   Q = (V/p₀)·(T₀/T)·dp/dt,  over a stretch  Q = (p₂ − p₁)/p₀ · V/t · T₀/T
 *
 * (seen in guides to measuring free air delivery by pumping up; identity).
 */
import { square } from '../numerics/elementary/whole-powers.ts';
import { leastSquares, type LeastSquaresFit } from '../numerics/least-squares.ts';
import { student95 } from '../numerics/student.ts';

export interface PumpUpReadings {
  /** From the first reading [s]; pressures [Pa absolute], already at room temperature if they were put right. */
  readonly time: readonly number[];
  readonly pressure: readonly number[];
  /** Standard error of a pressure. */
  readonly error: number;
}

export interface PumpUpFit {
  readonly fit: LeastSquaresFit;
  readonly pressures: readonly number[];
  /** Mean dp/dt over the whole time, and dp/dt at its beginning and end [Pa/s], each with half its 95 % interval. */
  readonly mean: Slope;
  readonly first: Slope;
  readonly last: Slope;
}

export interface Slope {
  readonly value: number;
  readonly half: number;
}

export function pumpUpFit({ time, pressure, error }: PumpUpReadings): PumpUpFit {
  const span = time.at(-1)!;
  const rise = pressure.at(-1)! - pressure[0]!;
  // In shares of the span and the rise, about the middle, so that the three hardly know of each other.
  const s = (t: number): number => t / span - 0.5;
  const law = (p: readonly number[], t: number): number =>
    pressure[0]! + rise * (p[0]! + p[1]! * s(t) + p[2]! * square(s(t)));
  const fit = leastSquares({
    start: [0.5, 1, 0],
    residuals: (p) => time.map((t, i) => (law(p, t) - pressure[i]!) / error),
  });
  const t95 = student95(fit.degreesOfFreedom);
  const slope = (weights: readonly [number, number]): Slope => {
    const [b, c] = [fit.parameters[1]!, fit.parameters[2]!];
    const [wb, wc] = weights;
    const cov = (i: number, k: number): number => fit.covariance[i]![k]!;
    const variance = wb * wb * cov(1, 1) + 2 * wb * wc * cov(1, 2) + wc * wc * cov(2, 2);
    return { value: ((wb * b + wc * c) * rise) / span, half: (t95 * Math.sqrt(variance) * rise) / span };
  };
  return {
    fit,
    pressures: time.map((t) => law(fit.parameters, t)),
    mean: slope([1, 0]),
    first: slope([1, -1]),
    last: slope([1, 1]),
  };
}
