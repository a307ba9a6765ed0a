/**
 * Standard reference atmosphere ANR of ISO 8778: 100 kPa, 20 °C, 65 % relative humidity.
 *
 * Air use is quoted to people as a volume of this air. The density is the rounded figure that goes with the standard
 * and with ISO 6358 conductances; it is a constant, not derived from the humidity.
 *
 * ANR is air by definition. Another gas is quoted as its own volume at the same pressure and temperature.
 */
import type { Gas } from './gas.ts';

export const ANR_PRESSURE = 100e3;
export const ANR_TEMPERATURE = 293.15;
export const ANR_DENSITY = 1.185;

/** Volume flow of reference air [m³/s] that has the mass flow [kg/s]. */
export function anrVolumeFlow(massFlow: number): number {
  return massFlow / ANR_DENSITY;
}

/** Volume flow [m³/s] at 100 kPa and 20 °C of the mass flow [kg/s]; of air, as ANR. */
export function referenceVolumeFlow(gas: Gas, massFlow: number): number {
  if (gas.origin === 'room air') return anrVolumeFlow(massFlow);
  return (massFlow * gas.specificGasConstant * ANR_TEMPERATURE) / ANR_PRESSURE;
}
