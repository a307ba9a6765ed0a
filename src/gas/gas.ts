/**
 * The working gas: an ideal gas with constant heat capacities and a viscosity law.
 *
 * p V = m R T, u = cv T, h = cp T. Up to 12 bar and at room temperature dry air departs from this by less than
 * 0.5 % in density (multi-parameter equation of state, see docs/model.md).
 *
 * One gas is everywhere in an engine: whatever it sucks back from the room counts as working gas too.
 */
import { pow } from '../numerics/elementary/power.ts';
import { powerTable, type PowerTable } from '../numerics/power-table.ts';
import type { GasCheck } from './gas-check.ts';
import type { SutherlandViscosity } from './sutherland.ts';

/** Taken in from the room by a compressor, moisture and all; or dry, and nothing to breathe. */
export type GasOrigin = 'room air' | 'bottles';

export interface Gas {
  readonly name: string;
  readonly origin: GasOrigin;
  /** R [J/(kg K)]. */
  readonly specificGasConstant: number;
  /** γ = cp/cv. */
  readonly heatCapacityRatio: number;
  /** cp and cv [J/(kg K)]. */
  readonly heatCapacityAtConstantPressure: number;
  readonly heatCapacityAtConstantVolume: number;
  /** Pr = cp μ/k, taken as constant; ties the heat conductivity to the viscosity. */
  readonly prandtlNumber: number;
  /** Dynamic viscosity [Pa s] at temperature T [K]. */
  readonly viscosity: SutherlandViscosity;
  /** Pressure ratio at and below which a nozzle chokes. */
  readonly criticalPressureRatio: number;
  /** ρ₂/ρ₁ = x^(1/γ) of an isentropic expansion, for pressure ratios x from the critical one to 1. */
  readonly densityRatio: PowerTable;
  /** √(2γ/((γ−1)R)) [s √K/m], of the nozzle law. */
  readonly nozzleFactor: number;
  /** ṁ √T / (A p) through a perfect choked nozzle [s √K/m]. */
  readonly chokedFlowFactor: number;
  /** Where the square root of the flow laws is rounded off, see `roundedRoot`. */
  readonly equalPressureRounding: number;
  /** Published values that all this reproduces. */
  readonly checks: readonly GasCheck[];
}

interface GasData {
  readonly name: string;
  readonly origin: GasOrigin;
  readonly specificGasConstant: number;
  readonly heatCapacityRatio: number;
  readonly prandtlNumber: number;
  readonly viscosity: SutherlandViscosity;
  readonly checks: readonly GasCheck[];
  readonly equalPressureRounding?: number;
}

/**
 * Rounding of √q near q = 0, in units of q = 1 − (p₂/p₁)^((γ−1)/γ): the laws become linear for pressure
 * differences below about 0.07 % of the upstream pressure. Halving it moves no settled speed by 0.1 % (test).
 */
const EQUAL_PRESSURE_ROUNDING = 2e-4;

/** [J/(mol K)], exact since the SI of 2019. */
const MOLAR_GAS_CONSTANT = 8.314_462_618;

/** R [J/(kg K)] of a gas with that molar mass [kg/mol]. */
export const gasConstantOf = (molarMass: number): number => MOLAR_GAS_CONSTANT / molarMass;

export function idealGas(data: GasData): Gas {
  const { specificGasConstant: R, heatCapacityRatio: gamma } = data;
  const cv = R / (gamma - 1);
  const criticalPressureRatio = pow(2 / (gamma + 1), gamma / (gamma - 1));
  return {
    name: data.name,
    origin: data.origin,
    specificGasConstant: R,
    heatCapacityRatio: gamma,
    heatCapacityAtConstantPressure: gamma * cv,
    heatCapacityAtConstantVolume: cv,
    prandtlNumber: data.prandtlNumber,
    viscosity: data.viscosity,
    criticalPressureRatio,
    densityRatio: powerTable(1 / gamma, criticalPressureRatio),
    nozzleFactor: Math.sqrt((2 * gamma) / ((gamma - 1) * R)),
    chokedFlowFactor: Math.sqrt((gamma / R) * pow(2 / (gamma + 1), (gamma + 1) / (gamma - 1))),
    equalPressureRounding: data.equalPressureRounding ?? EQUAL_PRESSURE_ROUNDING,
    checks: data.checks,
  };
}

/**
 * √q for q ≫ rounding, q/√rounding for q ≪ rounding, smooth between: q / (q² + rounding²)^¼.
 *
 * Flow laws go as √Δp, whose slope is infinite at equal pressures; no real passage does that, and no integrator
 * can step over it. The error is rounding²/(4 q²) of the value.
 */
export function roundedRoot(q: number, rounding: number): number {
  return q / Math.sqrt(Math.sqrt(q * q + rounding * rounding));
}

/** d/dq of `roundedRoot`. */
export function roundedRootSlope(q: number, rounding: number): number {
  const square = q * q + rounding * rounding;
  return (1 - (0.5 * q * q) / square) / Math.sqrt(Math.sqrt(square));
}
