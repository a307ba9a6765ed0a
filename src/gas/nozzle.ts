/**
 * Ports and orifices: isentropic nozzle flow through an effective area.
 *
 *   ṁ = Cd A p₁/√T₁ · ψ(x),  x = p₂/p₁,  ψ = √( 2γ/((γ−1)R) · (x^(2/γ) − x^((γ+1)/γ)) ), held for x ≤ x*
 *
 * Assumes steady flow through the port at each instant, no recovery of the jet behind it. Source: any gas-dynamics
 * text, for example White, Fluid Mechanics, chapter on compressible flow.
 */
import { powerFrom } from '../numerics/power-table.ts';
import { roundedRoot, roundedRootSlope, type Gas } from './gas.ts';

/** ψ(x) at a pressure ratio x = p₂/p₁ ≤ 1 [s √K/m]. */
export function nozzleFunction(gas: Gas, ratio: number): number {
  const x = Math.max(ratio, gas.criticalPressureRatio);
  // The other power, x^((γ−1)/γ) = T₂/T₁, follows from the densities.
  const density = powerFrom(gas.densityRatio, x);
  return gas.nozzleFactor * density * roundedRoot(1 - x / density, gas.equalPressureRounding);
}

/** dψ/dx: nothing as long as it chokes. With r = x^(1/γ) and T₂/T₁ = x/r, r′ = r/(γx) and (x/r)′ = (1 − 1/γ)/r. */
export function nozzleFunctionSlope(gas: Gas, ratio: number): number {
  if (ratio < gas.criticalPressureRatio) return 0;
  const { heatCapacityRatio: gamma, equalPressureRounding: rounding } = gas;
  const density = powerFrom(gas.densityRatio, ratio);
  const q = 1 - ratio / density;
  const byDensity = (density / (gamma * ratio)) * roundedRoot(q, rounding);
  return gas.nozzleFactor * (byDensity - (1 - 1 / gamma) * roundedRootSlope(q, rounding));
}

/**
 * Mass flow [kg/s] from upstream (1) to downstream (2); needs p₁ ≥ p₂ > 0 [Pa absolute], T₁ > 0 [K],
 * effective area Cd·A ≥ 0 [m²].
 */
export function nozzleFlow(gas: Gas, effectiveArea: number, p1: number, t1: number, p2: number): number {
  return (effectiveArea * p1 * nozzleFunction(gas, p2 / p1)) / Math.sqrt(t1);
}

/** The most a nozzle of that effective area can pass [kg/s], whatever lies behind it. */
export function chokedFlow(gas: Gas, effectiveArea: number, p1: number, t1: number): number {
  return (effectiveArea * p1 * gas.chokedFlowFactor) / Math.sqrt(t1);
}

/** Effective area of throttles one behind the other: 1/S² = Σ 1/Sᵢ² (rule for effective areas in series). */
export function areaInSeries(first: number, second: number): number {
  return first === 0 ? 0 : (first * second) / Math.sqrt(first * first + second * second);
}
