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

export function sutherlandViscosity(reference: SutherlandConstants): (temperature: number) => number {
  const { viscosity, temperature: t0, sutherland: s } = reference;
  const factor = (viscosity * (t0 + s)) / pow(t0, 1.5);
  return (temperature) => (factor * temperature * Math.sqrt(temperature)) / (temperature + s);
}
