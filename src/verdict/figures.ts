/**
 * Numbers as a builder reads them, metric or, inside `inUnits`, imperial. Pressures always say gauge or absolute; air is
 * ANR in L/min with cfm beside it, and another gas its own volume at the same pressure and temperature.
 */
import { log10 } from '../numerics/elementary/logarithm.ts';
import { columnUnit, formatQuantity } from '../quantity/format.ts';
import { unitSystem } from '../quantity/unit-system.ts';
import type { GasFacts } from '../run/result.ts';

const LITRES_PER_MINUTE = 60e3;
const CUBIC_FOOT = 0.028_316_846_592;

/** With that many significant digits, but never rounding whole ones away; "not known" when there is no number. */
export function figure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'not known';
  if (value === 0) return '0';
  const decimals = digits - 1 - Math.floor(log10(Math.abs(value)));
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

const imperial = (): boolean => unitSystem() === 'imperial';

/** A temperature, to the degree. */
export const celsiusText = (kelvin: number): string =>
  imperial() ? `${fixed(kelvin * 1.8 - 459.67, 0)} °F` : `${fixed(kelvin - 273.15, 0)} °C`;

/** A pressure above another. */
export function barText(pascal: number): string {
  const { of, label, decimals } = columnUnit('pressure difference');
  return `${fixed(of(pascal), decimals)} ${label}`;
}

export const gaugeText = (absolute: number, atmosphere: number): string =>
  `${barText(absolute - atmosphere)} gauge`;

export const pressureText = (absolute: number, atmosphere: number): string =>
  `${gaugeText(absolute, atmosphere)} (${barText(absolute)} absolute)`;

/** Volume flow [m³/s] under the conditions of reference air, in both units people shop by. */
export function airText(flow: number, gas: GasFacts): string {
  const [first, other] = imperial()
    ? [figure(cubicFeetPerMinute(flow)), `${figure(litresPerMinute(flow))} L/min`]
    : [figure(litresPerMinute(flow)), `${figure(cubicFeetPerMinute(flow))} cfm`];
  return `${first} ${flowUnit(gas)} (${other})`;
}

/** ANR is air by definition; 100 kPa and 20 °C are its conditions. */
export const flowUnit = (gas: GasFacts): string =>
  `${columnUnit('volume flow').label} ${gas.origin === 'room air' ? 'ANR' : 'at 100 kPa and 20 °C'}`;

/** In the unit that `flowUnit` names. */
export const flowFigure = (flow: number): string => figure(columnUnit('volume flow').of(flow));

export const litresPerMinute = (flow: number): number => flow * LITRES_PER_MINUTE;

export const cubicFeetPerMinute = (flow: number): number => (flow * 60) / CUBIC_FOOT;

/** Water [kg/s] as people meet it in a drain: grams or ounces an hour. */
export const waterText = (flow: number): string =>
  imperial() ? `${figure(gramsPerHour(flow) / 28.349_523_125, 2)} oz` : `${figure(gramsPerHour(flow), 2)} g`;

export const gramsPerHour = (flow: number): number => flow * 3.6e6;

/** A stress [Pa] as it stands in tables. */
export function stressText(pascal: number): string {
  if (imperial())
    return pascal < 1e4 ? 'less than 1.5 psi' : `${figure(inColumn('pressure difference', pascal), 2)} psi`;
  return pascal < 1e4 ? 'less than 0.01 MPa' : `${figure(pascal / 1e6, 2)} MPa`;
}

const inColumn = (dimension: Parameters<typeof columnUnit>[0], value: number): number =>
  columnUnit(dimension).of(value);

/** In the unit of a column. */
export const columnText = (dimension: Parameters<typeof columnUnit>[0], value: number): string =>
  `${figure(inColumn(dimension, value))} ${columnUnit(dimension).label}`;

const FOOT = 0.3048;

/** The speed of a rim. */
export const rimSpeedText = (speed: number, digits = 3): string =>
  imperial() ? `${figure(speed / FOOT, digits)} ft/s` : `${figure(speed, digits)} m/s`;

/** How high some weight is lifted, or how large a wheel is. */
export const metresText = (length: number, digits = 3): string =>
  imperial() ? `${figure(length / FOOT, digits)} ft` : `${figure(length, digits)} m`;

export const torqueText = (torque: number): string => columnText('torque', torque);

/** Sentences that are filed as they are, for programs too, give torques in N·m; a reader has them in his own unit. */
export const inReadersUnits = (sentence: string): string =>
  sentence.replace(/([\d.e+-]+) N·m/gu, (_torque, value) => torqueText(Number(value)));

/** Watts in either system: what small machines are sold by. */
export const powerText = (power: number): string => `${figure(power)} W`;

const FOOT_POUND = 1.355_817_948_331_4;

/** 550 ft·lbf/s for an hour [J]. */
const HORSEPOWER_HOUR = 550 * FOOT_POUND * 3600;

export function workText(joule: number): string {
  if (imperial()) return `${figure(joule / FOOT_POUND)} ft·lbf`;
  return Math.abs(joule) < 1e3 ? `${figure(joule)} J` : `${figure(joule / 1e3)} kJ`;
}

/** What `airForWorkText` counts in. */
export const airForWorkUnit = (): { readonly label: string; readonly of: (value: number) => number } =>
  imperial()
    ? { label: 'ft³/(hp·h)', of: (volume) => (volume / CUBIC_FOOT) * HORSEPOWER_HOUR }
    : { label: 'L/kJ', of: (volume) => volume * 1e6 };

/** Air, in its volume of reference air, for each joule of work [m³/J]. */
export function airForWorkText(volume: number): string {
  const { label, of } = airForWorkUnit();
  return `${figure(of(volume))} ${label} ANR`;
}

export function litresText(volume: number): string {
  if (imperial()) return formatQuantity(volume, 'volume', { digits: 3 });
  return volume < 1e-3 ? `${figure(volume * 1e6)} cm³` : `${figure(volume * 1e3)} L`;
}

export const secondsText = (seconds: number): string => `${figure(seconds)} s`;

export const minutesText = (minutes: number): string =>
  minutes < 1 ? `${figure(minutes * 60, 2)} seconds` : `${figure(minutes, 2)} minutes`;
