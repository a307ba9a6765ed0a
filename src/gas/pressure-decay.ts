/**
 * The resistance of a leak from how fast a volume that was shut off loses its pressure.
 *
 * The volume V keeps its temperature, and all it loses goes through one laminar gap (gap.ts) into a room at p₀:
 *
 *   V dp/dt = −R T ṁ,  ṁ = (p² − p₀²)/(24 μ R T Z)   so   dp/dt = −(p² − p₀²)/(24 μ Z V)
 *
 * With 1/(p² − p₀²) = (1/(p − p₀) − 1/(p + p₀))/(2 p₀) the time from p₁ down to p₂ is
 *
 *   t = (12 μ Z V/p₀) ln[ (p₁ − p₀)(p₂ + p₀) / ((p₁ + p₀)(p₂ − p₀)) ]
 *
 * R and T have dropped out but for the viscosity. Derived; the law of the gap has its sources there.
 */
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';

export interface PressureDecay {
  /** Shut-off volume [m³]. */
  readonly volume: number;
  /** Pressures before and after [Pa absolute], p₁ > p₂ > p₀. */
  readonly from: number;
  readonly to: number;
  /** Pressure of the room [Pa absolute]. */
  readonly against: number;
  /** Time between the two [s]. */
  readonly time: number;
}

/** Z [1/m³] at the viscosity [Pa s] that the gas had in the volume. */
export function decayResistance(decay: PressureDecay, viscosity: number): number {
  const { volume, from: p1, to: p2, against: p0, time } = decay;
  const logarithm = log(((p1 - p0) * (p2 + p0)) / ((p1 + p0) * (p2 - p0)));
  return (time * p0) / (12 * viscosity * volume * logarithm);
}

/**
 * The pressure [Pa] at a time t [s] after it was p₁, through the same gap: with u = (p − p₀)/(p + p₀)
 *
 *   u = u₁ exp(−t/τ),  τ = 12 μ Z V/p₀,  p = p₀ (1 + u)/(1 − u)
 */
export function pressureThroughGap(
  from: number,
  against: number,
  timeConstant: number,
  time: number,
): number {
  const u = ((from - against) / (from + against)) * exp(-time / timeConstant);
  return (against * (1 + u)) / (1 - u);
}
