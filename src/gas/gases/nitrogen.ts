/**
 * Nitrogen from bottles. R from the molar mass 28.0134 g/mol, γ = 1.4 (diatomic).
 * Viscosity: Sutherland's law with μ₀ = 1.781e-5 Pa s at 300.55 K, S = 111 K (list at cableizer.com/documentation/eta0_gas,
 * seen); within 1 % of tables from 200 to 400 K. Prandtl number: a table's value at 300 K, taken as constant.
 */
import type { GasCheck } from '../gas-check.ts';
import { gasConstantOf, idealGas } from '../gas.ts';
import { sutherlandViscosity } from '../sutherland.ts';

const room = { temperature: 300, pressure: 101_325 };
const tables = "Mechanical Engineers' Handbook vol. 4, thermophysical properties of fluids, table 19 (seen)";
const crc = 'Huber and Harvey, Viscosity of Gases, CRC Handbook of Chemistry and Physics (seen)';
const cengel = 'Çengel, property tables, ideal-gas specific heats at 25 °C (seen)';

const checks: readonly GasCheck[] = [
  { property: 'density', at: room, expected: 1 / 0.8786, tolerance: 1e-3, source: tables },
  { property: 'speed of sound', at: room, expected: 353, tolerance: 2e-3, source: tables },
  { property: 'Prandtl number', at: room, expected: 0.715, tolerance: 1e-3, source: tables },
  {
    property: 'heat capacity at constant pressure',
    at: { temperature: 298.15 },
    expected: 1040,
    tolerance: 2e-3,
    source: cengel,
  },
  {
    property: 'heat capacity at constant volume',
    at: { temperature: 298.15 },
    expected: 742.9,
    tolerance: 2e-3,
    source: cengel,
  },
  {
    property: 'heat capacity ratio',
    at: { temperature: 298.15 },
    expected: 1.4,
    tolerance: 4e-4,
    source: cengel,
  },
  { property: 'viscosity', at: { temperature: 200 }, expected: 12.9e-6, tolerance: 1e-2, source: crc },
  { property: 'viscosity', at: { temperature: 300 }, expected: 17.9e-6, tolerance: 1e-2, source: crc },
  { property: 'viscosity', at: { temperature: 400 }, expected: 22.2e-6, tolerance: 1e-2, source: crc },
];

export const nitrogen = idealGas({
  name: 'nitrogen',
  origin: 'bottles',
  specificGasConstant: gasConstantOf(28.0134e-3),
  heatCapacityRatio: 1.4,
  prandtlNumber: 0.715,
  viscosity: sutherlandViscosity({ viscosity: 1.781e-5, temperature: 300.55, sutherland: 111 }),
  checks,
});
