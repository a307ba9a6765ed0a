/**
 * Heat between wall and gas by a correlation for turbulent flow, on bore B and mean piston speed w:
 *
 *   Nu = h B/k = 0.053 Re^0.8 Pr^0.6,  Re = ρ w B/μ,  w = 2·stroke·n,  k = cp μ/Pr,  ρ = p/(R T)
 *
 * Form used for reciprocating compressors (from memory), there for Reynolds numbers of about 10³ to 10⁵; authors differ in
 * the length and speed they put in, so that twice or half the heat would be no surprise. Gas properties at the gas
 * temperature; one coefficient for the whole wall. At rest no heat flows.
 */
import { optional, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { pow } from '../../numerics/elementary/power.ts';
import { widePowerFrom, widePowerTable } from '../../numerics/wide-power-table.ts';
import type { PartContext } from '../part-context.ts';
import type { WallHeat } from './wall-heat.ts';

const FACTOR = 0.053;
/** The kernel has this power in its tables, and no other. */
const REYNOLDS_POWER = 0.8;
const PRANDTL_POWER = 0.6;

const powers = widePowerTable(REYNOLDS_POWER);

/** Mean piston speed [m/s] at a crank speed [rad/s]: two strokes a turn. */
const meanPistonSpeed = (crankRadius: number, speed: number): number => (2 * crankRadius * speed) / Math.PI;

export const correlationWallHeat = kindOf({
  kind: 'correlation',
  doc: 'A coefficient that grows with speed and density of the air, after a correlation for reciprocating compressors.',
  parameters: {
    wall_temperature: optional(
      quantity(
        'temperature',
        { min: 200, max: 800 },
        '15 degC',
        'Mean wall temperature; the room if not given.',
        'A thermocouple or a contact thermometer under a dab of grease, outside, half way along the barrel, ' +
          'when the engine has run for a quarter of an hour.',
      ),
    ),
  },
  build: ({ wall_temperature }, { gas, bore, crank, atmosphericTemperature }: PartContext): WallHeat => {
    const wallTemperature = wall_temperature ?? atmosphericTemperature;
    const { prandtlNumber, specificGasConstant, heatCapacityAtConstantPressure } = gas;
    const constant = (FACTOR * pow(prandtlNumber, PRANDTL_POWER - 1) * heatCapacityAtConstantPressure) / bore;
    return {
      flow: (area, temperature, pressure, speed) => {
        const viscosity = gas.viscosity(temperature);
        const density = pressure / (specificGasConstant * temperature);
        const reynolds = (density * meanPistonSpeed(crank.crankRadius, speed) * bore) / viscosity;
        const coefficient = constant * viscosity * widePowerFrom(powers, reynolds);
        return coefficient * area * (wallTemperature - temperature);
      },
      law: {
        kind: 'correlated',
        wallTemperature,
        factor: constant,
        length: bore,
        crankRadius: crank.crankRadius,
      },
    };
  },
});
