/** The viscosity of dry air against more tables than it carries itself. */
import { describe, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { expectWithin } from '../support/expect-within.ts';

const KELVIN = 273.15;
const micro = (temperature_degC: number): number => dryAir.viscosity(temperature_degC + KELVIN) * 1e6;

describe('viscosity of air [1e-6 Pa s]', () => {
  // Sutherland's law with μ₀ = 1.716e-5, T₀ = 273.15 K, S = 110.4 K: form and constants seen, ambrsoft.com.
  it.each([
    [0, 17.16],
    [15, 17.893],
    [20, 18.133],
    [50, 19.535],
    [100, 21.733],
  ])('%s °C: %s by Sutherland (seen)', (temperature, viscosity) => {
    expectWithin(micro(temperature), viscosity, 5e-4);
  });

  // Another fit, Irvine and Liley 1984, a polynomial in T; Sutherland stands 0.35–0.43 % lower throughout.
  it.each([
    [0, 17.234],
    [20, 18.206],
    [50, 19.607],
    [100, 21.809],
  ])('%s °C: %s by an independent fit, to 0.6 %% (seen)', (temperature, viscosity) => {
    expectWithin(micro(temperature), viscosity, 0.006);
  });

  it('15 °C: 17.894 by the 1976 form 1.458e-6 T^1.5/(T + 110.4), to 0.01 % (from memory)', () => {
    expectWithin(micro(15), 17.894, 1e-4);
  });
});
