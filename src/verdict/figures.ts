/**
 * Numbers as a builder reads them. Pressures always say gauge or absolute; air is ANR in L/min with cfm beside it, and
 * another gas its own volume at the same pressure and temperature.
 */
import type { GasFacts } from '../run/result.ts';

const PA_PER_BAR = 1e5;
const ZERO_CELSIUS = 273.15;
const LITRES_PER_MINUTE = 60e3;
const CUBIC_FOOT = 0.028_316_846_592;

/** With that many significant digits, but never rounding whole ones away; "not known" when there is no number. */
export function figure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'not known';
  if (value === 0) return '0';
  const decimals = digits - 1 - Math.floor(Math.log10(Math.abs(value)));
  return fixed(value, Math.min(Math.max(decimals, 0), 12));
}

/** With that many decimals and a true minus sign. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

export const speedText = (radPerSecond: number): string => `${figure((radPerSecond * 30) / Math.PI)} rpm`;

export const shareText = (share: number): string =>
  `${fixed(share * 100, Math.abs(share) < 0.0995 ? 1 : 0)} %`;

export const degrees = (angle: number): number => (angle * 180) / Math.PI;

export const angleText = (angle: number): string => `${fixed(degrees(angle), 0)}°`;

export const celsiusText = (kelvin: number): string => `${fixed(kelvin - ZERO_CELSIUS, 0)} °C`;

export const barText = (pascal: number): string => `${fixed(pascal / PA_PER_BAR, 2)} bar`;

export const gaugeText = (absolute: number, atmosphere: number): string =>
  `${barText(absolute - atmosphere)} gauge`;

export const pressureText = (absolute: number, atmosphere: number): string =>
  `${gaugeText(absolute, atmosphere)} (${barText(absolute)} absolute)`;

/** Volume flow [m³/s] under the conditions of reference air, in both units people shop by. */
export const airText = (flow: number, gas: GasFacts): string =>
  `${figure(litresPerMinute(flow))} ${flowUnit(gas)} (${figure(cubicFeetPerMinute(flow))} cfm)`;

/** ANR is air by definition; 100 kPa and 20 °C are its conditions. */
export const flowUnit = (gas: GasFacts): string =>
  gas.origin === 'room air' ? 'L/min ANR' : 'L/min at 100 kPa and 20 °C';

export const litresPerMinute = (flow: number): number => flow * LITRES_PER_MINUTE;

export const cubicFeetPerMinute = (flow: number): number => (flow * 60) / CUBIC_FOOT;

/** Water [kg/s] as people meet it in a drain: grams an hour. */
export const waterText = (flow: number): string => `${figure(gramsPerHour(flow), 2)} g`;

export const gramsPerHour = (flow: number): number => flow * 3.6e6;

/** A stress [Pa] as it stands in tables. */
export const stressText = (pascal: number): string =>
  pascal < 1e4 ? 'less than 0.01 MPa' : `${figure(pascal / 1e6, 2)} MPa`;

export const torqueText = (torque: number): string => `${figure(torque)} N·m`;

export const powerText = (power: number): string => `${figure(power)} W`;

export const workText = (joule: number): string =>
  Math.abs(joule) < 1e3 ? `${figure(joule)} J` : `${figure(joule / 1e3)} kJ`;

export const litresText = (volume: number): string =>
  volume < 1e-3 ? `${figure(volume * 1e6)} cm³` : `${figure(volume * 1e3)} L`;

export const secondsText = (seconds: number): string => `${figure(seconds)} s`;

export const minutesText = (minutes: number): string =>
  minutes < 1 ? `${figure(minutes * 60, 2)} seconds` : `${figure(minutes, 2)} minutes`;
