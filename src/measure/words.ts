/** Numbers and intervals in the words of findings. */
import type { Dimension } from '../kinds/parameter.ts';
import { columnUnit, formatQuantity } from '../quantity/format.ts';
import { unitSystem } from '../quantity/unit-system.ts';
import type { Estimate } from './finding.ts';

/** Three significant digits, never as a power of ten. */
export const plain = (value: number, digits = 3): string => {
  if (!Number.isFinite(value)) return 'no figure';
  return String(Number(value.toPrecision(digits))).replace(/^-/u, '−');
};

export const shown = (value: number, dimension: Dimension | 'number', digits = 3): string => {
  if (value === Infinity) return 'anything above';
  if (!Number.isFinite(value)) return 'no figure';
  if (dimension === 'number') return plain(value, digits);
  return formatQuantity(value, dimension, { digits }).replace(/^-/u, '−');
};

/** "12 µm (11 µm to 13 µm)" */
export function estimateText({ value, low, high, dimension, suffix }: Estimate): string {
  const behind = suffix === undefined ? '' : ` ${suffix}`;
  const end = Number.isFinite(high) ? shown(high, dimension) : 'no bound';
  return `${shown(value, dimension)}${behind} (${shown(low, dimension)} to ${end})`;
}

export const percent = (share: number): string => `${plain(100 * share, 2)} %`;

/** What a gauge shows, in the unit of `gaugeLabel`. */
export const gaugeReading = (absolute: number, atmosphere: number): number =>
  columnUnit('pressure difference').of(absolute - atmosphere);

export const gaugeLabel = (): string => `${columnUnit('pressure difference').label} gauge`;

export const gaugeText = (absolute: number, atmosphere: number): string =>
  `${gaugeReading(absolute, atmosphere).toFixed(columnUnit('pressure difference').decimals)} ${gaugeLabel()}`;

interface DrawnUnit {
  readonly label: string;
  readonly of: (value: number) => number;
}

/** For pressures as small as the steps of a gauge. */
export const fineUnit = (): DrawnUnit =>
  unitSystem() === 'imperial'
    ? columnUnit('pressure difference')
    : { label: 'mbar', of: (pascal) => pascal / 100 };

export const fineText = (pascal: number, digits = 2): string => {
  const { label, of } = fineUnit();
  return `${plain(of(pascal), digits)} ${label}`;
};

const FOOT_POUND = 1.355_817_948_331_4;

export const workText = (joule: number, digits = 3): string =>
  unitSystem() === 'imperial' ? `${plain(joule / FOOT_POUND, digits)} ft·lbf` : `${plain(joule, digits)} J`;

/** A value as a scenario takes it, with enough digits not to move anything. */
export const written = (value: number, dimension: Dimension): string =>
  formatQuantity(value, dimension, { digits: 4 })
    .replace('°C', 'degC')
    .replace('°F', 'degF')
    .replace('µ', 'u');

export const rpm = (speed: number): number => (speed * 30) / Math.PI;

export const angleDegrees = (angle: number): number => (angle * 180) / Math.PI;

export const degreesText = (angle: number): string => `${Math.round(angleDegrees(angle))}°`;
