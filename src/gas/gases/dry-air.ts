/**
 * Dry air. R and γ: US Standard Atmosphere 1976 values as tabulated for standard sea level.
 * Viscosity: Sutherland's law with μ₀ = 1.716e-5 Pa s at 273.15 K, S = 110.4 K; within 0.5 % of tables from 0 to 100 °C.
 * Prandtl number: a table's value at 300 K; it hardly changes from 0 to 100 °C.
 */
import type { GasCheck } from '../gas-check.ts';
import { idealGas } from '../gas.ts';
import { sutherlandViscosity } from '../sutherland.ts';

const seaLevel = { temperature: 288.15, pressure: 101_325 };
const standard = 'standard sea level, US Standard Atmosphere 1976, as printed in encyclopaedias (seen)';
const table = 'table of gas viscosities, cableizer.com/documentation/eta_gas (seen)';
const handbook = "Mechanical Engineer's Data Handbook, general properties of air (seen)";

const checks: readonly GasCheck[] = [
  { property: 'density', at: seaLevel, expected: 1.225, tolerance: 4e-4, source: standard },
  { property: 'speed of sound', at: seaLevel, expected: 340.3, tolerance: 2e-4, source: standard },
  { property: 'viscosity', at: seaLevel, expected: 1.789e-5, tolerance: 3e-4, source: standard },
  {
    property: 'heat capacity at constant pressure',
    at: seaLevel,
    expected: 1005,
    tolerance: 1e-3,
    source: standard,
  },
  {
    property: 'heat capacity at constant volume',
    at: seaLevel,
    expected: 717.98,
    tolerance: 1e-3,
    source: standard,
  },
  { property: 'viscosity', at: { temperature: 273.15 }, expected: 1.7218e-5, tolerance: 5e-3, source: table },
  { property: 'viscosity', at: { temperature: 323.15 }, expected: 1.9601e-5, tolerance: 5e-3, source: table },
  { property: 'viscosity', at: { temperature: 348.15 }, expected: 2.0721e-5, tolerance: 5e-3, source: table },
  {
    property: 'Prandtl number',
    at: { temperature: 300 },
    expected: 0.711,
    tolerance: 1e-3,
    source: handbook,
  },
  {
    property: 'critical pressure ratio',
    at: { temperature: 300 },
    expected: 0.528,
    tolerance: 1e-3,
    source: 'gas-dynamics tables for γ = 1.4 (from memory)',
  },
];

export const dryAir = idealGas({
  name: 'dry air',
  origin: 'room air',
  specificGasConstant: 287.05,
  heatCapacityRatio: 1.4,
  prandtlNumber: 0.711,
  viscosity: sutherlandViscosity({ viscosity: 1.716e-5, temperature: 273.15, sutherland: 110.4 }),
  checks,
});
