/**
 * Viscosity of a dilute gas by Sutherland's law: μ = μ₀ (T/T₀)^1.5 (T₀ + S)/(T + S), whatever the pressure.
 *
 * Source: any text on viscous flow; the constants belong to the gas.
 */
import { pow } from '../numerics/elementary/power.ts';

interface SutherlandConstants {
  /** μ₀ [Pa s] at T₀ [K]. */
  readonly viscosity: number;
  readonly temperature: number;
  /** S [K]. */
  readonly sutherland: number;
}

/** μ [Pa s] at a temperature [K], and the numbers it goes by: μ = factor T^1.5/(T + constant). */
export interface SutherlandViscosity {
  (temperature: number): number;
  readonly factor: number;
  readonly constant: number;
}

export function sutherlandViscosity(reference: SutherlandConstants): SutherlandViscosity {
  const { viscosity, temperature: t0, sutherland: s } = reference;
  const factor = (viscosity * (t0 + s)) / pow(t0, 1.5);
  const law = (temperature: number): number =>
    (factor * temperature * Math.sqrt(temperature)) / (temperature + s);
  return Object.assign(law, { factor, constant: s });
}
