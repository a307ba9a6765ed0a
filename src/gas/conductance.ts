/**
 * Bought fittings, regulators, valves and hoses: flow by sonic conductance (ISO 6358-1).
 *
 *   ṁ = C p₁ ρ₀ √(T₀/T₁) φ,  φ = 1 for x ≤ b, else √(1 − ((x − b)/(1 − b))²),  x = p₂/p₁
 *
 * C is defined with air; for another gas it is scaled by the ratio of the choked flow factors. b is kept as measured with
 * air, though an ideal nozzle's falls from 0.53 to 0.49 for a monatomic gas.
 */
import { pow } from '../numerics/elementary/power.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { roundedRoot, roundedRootSlope, type Gas } from './gas.ts';
import { dryAir } from './gases/dry-air.ts';
import { ANR_DENSITY, ANR_TEMPERATURE } from './reference-atmosphere.ts';

export interface Conductance {
  /** C [m³/(s Pa)]. */
  readonly sonicConductance: number;
  /** b, the pressure ratio below which the flow is choked. */
  readonly criticalPressureRatio: number;
}

/** C ρ₀ √T₀, scaled to the gas: ṁ √T₁/(p₁ φ) [m s √K]. */
export const chokedFactor = (gas: Gas, { sonicConductance }: Conductance): number =>
  sonicConductance *
  ANR_DENSITY *
  Math.sqrt(ANR_TEMPERATURE) *
  (gas.chokedFlowFactor / dryAir.chokedFlowFactor);

/** φ(x) at a pressure ratio x = p₂/p₁ ≤ 1, for a critical ratio b. */
export function subsonicShare(gas: Gas, b: number, ratio: number): number {
  const s = Math.max(0, (ratio - b) / (1 - b));
  return roundedRoot(1 - s * s, gas.equalPressureRounding);
}

/** dφ/dx: nothing as long as it is choked. */
export function subsonicShareSlope(gas: Gas, b: number, ratio: number): number {
  const s = Math.max(0, (ratio - b) / (1 - b));
  return ((-2 * s) / (1 - b)) * roundedRootSlope(1 - s * s, gas.equalPressureRounding);
}

/** Mass flow [kg/s]; p₁ ≥ p₂ > 0 [Pa absolute], T₁ > 0 [K]. */
export function conductanceFlow(gas: Gas, element: Conductance, p1: number, t1: number, p2: number): number {
  const share = subsonicShare(gas, element.criticalPressureRatio, p2 / p1);
  return (chokedFactor(gas, element) * p1 * share) / Math.sqrt(t1);
}

/**
 * A hose or tube from its bore d and length L [m]: C = 0.029 d²/√(L/d^1.25 + 510) m³/(s Pa), b = 474 C/d². Relation of the
 * pneumatics literature (Beater, Pneumatic Drives; from memory), checked against a friction-pipe calculation to 12 %
 * for 2.5–6 mm bores and 0.5–2 m.
 */
export function tubeConductance(bore: number, length: number): Conductance {
  const sonicConductance = (0.029 * square(bore)) / Math.sqrt(length / pow(bore, 1.25) + 510);
  return { sonicConductance, criticalPressureRatio: (474 * sonicConductance) / square(bore) };
}

/** C [m³/(s Pa)] of a plain orifice of effective area Cd·A [m²], by equal choked flow. */
export function conductanceOfArea(effectiveArea: number): number {
  return (effectiveArea * dryAir.chokedFlowFactor) / (ANR_DENSITY * Math.sqrt(ANR_TEMPERATURE));
}
