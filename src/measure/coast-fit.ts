/**
 * A wheel left to itself: dry friction T, viscous friction c, and what is known to resist besides.
 *
 *   J dω/dt = −(T + c ω + P(ω)),  ω(0) = ω₀
 *
 * With P = 0 the answer is ω = (ω₀ + T/c) exp(−c t/J) − T/c. J and P are given, T, c and ω₀ fitted. P runs straight
 * between the speeds at which it is given.
 */
import { square } from '../numerics/elementary/whole-powers.ts';
import { leastSquares, type LeastSquaresFit } from '../numerics/least-squares.ts';

export interface CoastReadings {
  /** From the first reading [s]; speeds [rad/s]. */
  readonly time: readonly number[];
  readonly speed: readonly number[];
  /** Standard error of a speed. */
  readonly error: number;
  /** J [kg m²]. */
  readonly inertia: number;
  /** P at speeds [rad/s] that ascend; none for no pumping. */
  readonly pumping: readonly { readonly speed: number; readonly torque: number }[];
}

export interface CoastFit {
  /** T [N m] and c [N m s]. */
  readonly dry: number;
  readonly viscous: number;
  /** Their covariance, row by row. */
  readonly covariance: readonly [readonly [number, number], readonly [number, number]];
  readonly fit: LeastSquaresFit;
  /** Fitted speeds at the readings. */
  readonly speeds: readonly number[];
}

/** P [N m] at a speed; level beyond the ends. */
export function pumpingAt(pumping: CoastReadings['pumping'], speed: number): number {
  const above = pumping.findIndex((own) => own.speed >= speed);
  const [low, high] = [pumping[above - 1], pumping[above]];
  if (high === undefined) return pumping.at(-1)?.torque ?? 0;
  if (low === undefined) return high.torque;
  return low.torque + ((high.torque - low.torque) * (speed - low.speed)) / (high.speed - low.speed);
}

interface Law {
  readonly dry: number;
  readonly viscous: number;
  readonly from: number;
}

/** Speeds at the times, by Runge–Kutta with two steps from reading to reading; a stopped wheel stays stopped. */
function coasting({ time, inertia, pumping }: CoastReadings, { dry, viscous, from }: Law): number[] {
  const slope = (speed: number): number =>
    -(dry + viscous * speed + pumpingAt(pumping, Math.max(0, speed))) / inertia;
  let speed = from;
  return time.map((now, i) => {
    const h = (now - (time[i - 1] ?? now)) / 2;
    for (let k = 0; k < 2 && h > 0 && speed > 0; k += 1) {
      const k1 = slope(speed);
      const k2 = slope(speed + (h / 2) * k1);
      const k3 = slope(speed + (h / 2) * k2);
      const k4 = slope(speed + h * k3);
      speed = Math.max(0, speed + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4));
    }
    return speed;
  });
}

export function coastFit(readings: CoastReadings): CoastFit {
  const { time, speed, error, inertia } = readings;
  const [first, last] = [speed[0]!, speed.at(-1)!];
  // What would slow it down alike all the way; both parts are counted in shares of it.
  const whole = (inertia * (first - last)) / time.at(-1)!;
  const units = { dry: whole, viscous: whole / first };
  const lawOf = (p: readonly number[]): Law => ({
    dry: p[0]! * units.dry,
    viscous: p[1]! * units.viscous,
    from: first + p[2]! * error,
  });
  const fit = leastSquares({
    start: [0.5, 0.5, 0],
    residuals: (p) => coasting(readings, lawOf(p)).map((own, i) => (own - speed[i]!) / error),
  });
  const { dry, viscous } = lawOf(fit.parameters);
  const [row0, row1] = [fit.covariance[0]!, fit.covariance[1]!];
  const cross = row0[1]! * units.dry * units.viscous;
  return {
    dry,
    viscous,
    covariance: [
      [row0[0]! * square(units.dry), cross],
      [cross, row1[1]! * square(units.viscous)],
    ],
    fit,
    speeds: coasting(readings, lawOf(fit.parameters)),
  };
}
