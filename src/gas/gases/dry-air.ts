/**
 * Dry air. R and γ: US Standard Atmosphere 1976 values as tabulated for standard sea level.
 * Prandtl number: 0.71 at room temperature, from memory of heat-transfer tables; it hardly changes from 0 to 100 °C.
 * Viscosity: Sutherland's law with μ₀ = 1.716e-5 Pa s at 273.15 K, S = 110.4 K; within 0.5 % of tables from 0 to 100 °C.
 */
import { idealGas } from '../gas.ts';

const SUTHERLAND_CONSTANT = 110.4;
const REFERENCE_TEMPERATURE = 273.15;
const REFERENCE_VISCOSITY = 1.716e-5;

function sutherlandViscosity(temperature: number): number {
  const ratio = temperature / REFERENCE_TEMPERATURE;
  return (
    (REFERENCE_VISCOSITY * ratio * Math.sqrt(ratio) * (REFERENCE_TEMPERATURE + SUTHERLAND_CONSTANT)) /
    (temperature + SUTHERLAND_CONSTANT)
  );
}

export const dryAir = idealGas({
  name: 'dry air',
  specificGasConstant: 287.05,
  heatCapacityRatio: 1.4,
  prandtlNumber: 0.71,
  viscosity: sutherlandViscosity,
});
