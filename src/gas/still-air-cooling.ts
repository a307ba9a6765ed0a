/**
 * How fast the gas in a shut vessel takes on the temperature of its walls, as an estimate.
 *
 *   T − T_wall ~ exp(−t/τ),  τ = ρ cv D/(6 h),  h = Nu k/D,  D the diameter of a sphere of that volume
 *   Nu = max(2π²/3, 0.13 Ra^(1/3)),  Ra = g D³ ΔT/(T ν a)  with ΔT = 10 K
 *
 * 2π²/3 is the slowest mode of conduction in a sphere of still gas (exact); 0.13 Ra^(1/3) is turbulent natural convection
 * (McAdams, Heat Transmission, from memory). A long or ribbed vessel is faster, so this errs on the side of waiting.
 */
import { cbrt } from '../numerics/elementary/roots.ts';
import { cube, square } from '../numerics/elementary/whole-powers.ts';
import type { Gas } from './gas.ts';

const GRAVITY = 9.80665;
const STIRRING_DIFFERENCE = 10;

/** τ [s] of a volume [m³] at a pressure [Pa absolute] and temperature [K]. */
export function coolingTimeConstant(gas: Gas, volume: number, pressure: number, temperature: number): number {
  const density = pressure / (gas.specificGasConstant * temperature);
  const viscosity = gas.viscosity(temperature);
  const conductivity = (gas.heatCapacityAtConstantPressure * viscosity) / gas.prandtlNumber;
  const diameter = cbrt((6 * volume) / Math.PI);
  const diffusivity = conductivity / (density * gas.heatCapacityAtConstantPressure);
  const rayleigh =
    (GRAVITY * cube(diameter) * STIRRING_DIFFERENCE * density) / (temperature * viscosity * diffusivity);
  const nusselt = Math.max((2 * square(Math.PI)) / 3, 0.13 * cbrt(rayleigh));
  return (density * gas.heatCapacityAtConstantVolume * square(diameter)) / (6 * nusselt * conductivity);
}
