/**
 * How a volume that was shut off loses its pressure through an orifice, at the temperature of its walls.
 *
 *   V dp/dt = −R T ṁ,  ṁ by the nozzle law (nozzle.ts) through the effective area S = Cd A
 *
 * While the orifice chokes, with χ the choked flow factor,
 *
 *   p = p₁ exp(−β t),  β = χ S R √T/V
 *
 * Below the critical ratio, with w = √(1 − (p₀/p)^((γ−1)/γ)) and n = γ/(γ−1),
 *
 *   dw/dt = −κ (1 − w²)ⁿ,  κ = S √T/(2 n V) · √(2 n R)   so   κ t = G(w₁) − G(w₂),  G(w) = ∫₀ʷ (1 − u²)⁻ⁿ du
 *
 * which reaches the room's pressure in a finite time. G is summed as its power series. Derived; choked form: vessel
 * blow-down literature (Lees, Loss Prevention, as quoted by A. Farrell, "Vessel Blowdown").
 */
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import { pow } from '../numerics/elementary/power.ts';
import type { Gas } from './gas.ts';

export interface OrificeDecay {
  readonly gas: Gas;
  /** S/V [1/m]: effective area over volume. */
  readonly areaPerVolume: number;
  /** T [K]. */
  readonly temperature: number;
  /** Pressure of the room [Pa absolute]. */
  readonly against: number;
}

/** The pressure [Pa] at a time t [s] after it was `from` ≥ `against`. */
export function pressureThroughOrifice(decay: OrificeDecay, from: number, time: number): number {
  const { gas, areaPerVolume, temperature, against } = decay;
  if (from <= against) return against;
  const { heatCapacityRatio: gamma, specificGasConstant: R } = gas;
  const n = gamma / (gamma - 1);
  const critical = against / gas.criticalPressureRatio;
  const beta = gas.chokedFlowFactor * areaPerVolume * R * Math.sqrt(temperature);
  const choked = from > critical ? log(from / critical) / beta : 0;
  if (time < choked) return from * exp(-beta * time);
  const w1 = Math.sqrt(1 - pow(against / Math.min(from, critical), 1 / n));
  const kappa = (areaPerVolume * Math.sqrt(2 * n * R * temperature)) / (2 * n);
  const left = flowIntegral(w1, n) - kappa * (time - choked);
  if (left <= 0) return against;
  const w = inverseFlowIntegral(left, n);
  return against * pow(1 - w * w, -n);
}

/** G(w); w² is at most 1/6 for a choking gas of γ = 1.4, and twenty terms are exact. */
function flowIntegral(w: number, n: number): number {
  let term = w;
  let sum = 0;
  for (let k = 0; k < 24; k += 1) {
    sum += term / (2 * k + 1);
    term *= ((n + k) / (k + 1)) * w * w;
  }
  return sum;
}

/** G(w) ≥ w, so the value itself lies above the root; G is convex, and Newton's steps come down on it. */
function inverseFlowIntegral(value: number, n: number): number {
  let w = value;
  for (let i = 0; i < 30; i += 1) {
    const step = (flowIntegral(w, n) - value) * pow(1 - w * w, n);
    w -= step;
    if (Math.abs(step) < 1e-14) break;
  }
  return w;
}
