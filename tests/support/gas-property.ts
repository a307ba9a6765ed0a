/** Properties of a gas as tables print them. */
import type { CheckedProperty, GasCheck } from '../../src/gas/gas-check.ts';
import type { Gas } from '../../src/gas/gas.ts';

const STANDARD_ATMOSPHERE = 101_325;

type Property = (gas: Gas, at: { readonly temperature: number; readonly pressure: number }) => number;

const properties: Readonly<Record<CheckedProperty, Property>> = {
  density: (gas, { temperature, pressure }) => pressure / (gas.specificGasConstant * temperature),
  'speed of sound': (gas, { temperature }) =>
    Math.sqrt(gas.heatCapacityRatio * gas.specificGasConstant * temperature),
  'heat capacity at constant pressure': (gas) => gas.heatCapacityAtConstantPressure,
  'heat capacity at constant volume': (gas) => gas.heatCapacityAtConstantVolume,
  'heat capacity ratio': (gas) => gas.heatCapacityRatio,
  'critical pressure ratio': (gas) => gas.criticalPressureRatio,
  viscosity: (gas, { temperature }) => gas.viscosity(temperature),
  'Prandtl number': (gas) => gas.prandtlNumber,
};

export const propertyOf = (gas: Gas, { property, at }: GasCheck): number =>
  properties[property](gas, { pressure: STANDARD_ATMOSPHERE, ...at });

/** What is wrong with a gas, check by check; a gas without checks has nothing to show for itself. */
export function checkComplaints(gas: Gas): string[] {
  const needed: CheckedProperty[] = ['viscosity', 'heat capacity at constant pressure', 'Prandtl number'];
  const missing = needed.filter((name) => gas.checks.every(({ property }) => property !== name));
  const wrong = gas.checks.filter((check) => {
    const error = Math.abs(propertyOf(gas, check) / check.expected - 1);
    return !(error <= check.tolerance) || check.source.length < 10;
  });
  return [
    ...missing.map((name) => `${gas.name} has no check of its ${name}`),
    ...wrong.map(
      (check) =>
        `${gas.name}: ${check.property} at ${check.at.temperature} K is ${propertyOf(gas, check)}, not ` +
        `${check.expected} (${check.source})`,
    ),
  ];
}
