/**
 * Helium: as unlike air as a gas gets. Monatomic, γ = 5/3, R from the molar mass 4.0026 g/mol, sound at 1000 m/s. Not for
 * scenarios; it shows that nothing takes air for granted.
 *
 * Viscosity: Sutherland's law with μ₀ = 1.865e-5 Pa s at 273 K, S = 79.4 K (source of the crate sciforge-lib, docs.rs, seen).
 */
import type { GasCheck } from '../../src/gas/gas-check.ts';
import { gasConstantOf, idealGas } from '../../src/gas/gas.ts';
import { sutherlandViscosity } from '../../src/gas/sutherland.ts';

const nist = 'NIST SRD 134, Database of the Thermophysical Properties of Gases, helium (seen)';
const cengel = 'Çengel, property tables, ideal-gas specific heats at 25 °C (seen)';
const at25 = { temperature: 298.15 };

const checks: readonly GasCheck[] = [
  { property: 'viscosity', at: { temperature: 200 }, expected: 15.1e-6, tolerance: 0.025, source: nist },
  { property: 'viscosity', at: { temperature: 300 }, expected: 19.9e-6, tolerance: 0.01, source: nist },
  { property: 'viscosity', at: { temperature: 400 }, expected: 24.3e-6, tolerance: 0.01, source: nist },
  // cp μ/λ with λ = 155.9 mW/(m K) and μ of the same table.
  { property: 'Prandtl number', at: { temperature: 300 }, expected: 0.663, tolerance: 0.01, source: nist },
  {
    property: 'heat capacity at constant pressure',
    at: at25,
    expected: 5193,
    tolerance: 5e-4,
    source: cengel,
  },
  { property: 'heat capacity at constant volume', at: at25, expected: 3116, tolerance: 5e-4, source: cengel },
  { property: 'heat capacity ratio', at: at25, expected: 1.667, tolerance: 5e-4, source: cengel },
  {
    property: 'critical pressure ratio',
    at: at25,
    expected: 0.487,
    tolerance: 1e-3,
    source: 'gas-dynamics tables for γ = 5/3 (from memory)',
  },
];

export const helium = idealGas({
  name: 'helium',
  origin: 'bottles',
  specificGasConstant: gasConstantOf(4.0026e-3),
  heatCapacityRatio: 5 / 3,
  prandtlNumber: 0.663,
  viscosity: sutherlandViscosity({ viscosity: 1.865e-5, temperature: 273, sutherland: 79.4 }),
  checks,
});
