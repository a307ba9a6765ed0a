/** Numbers and intervals in the words of findings. */
import type { Dimension } from '../kinds/parameter.ts';
import { formatQuantity } from '../quantity/format.ts';
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

const PA_PER_BAR = 1e5;

/** Gauge pressure in bar as drawn. */
export const gaugeBar = (absolute: number, atmosphere: number): number =>
  (absolute - atmosphere) / PA_PER_BAR;

export const gaugeText = (absolute: number, atmosphere: number): string =>
  `${gaugeBar(absolute, atmosphere).toFixed(2)} bar gauge`;

/** A value as a scenario takes it, with enough digits not to move anything. */
export const written = (value: number, dimension: Dimension): string =>
  formatQuantity(value, dimension, { digits: 4 }).replace('°C', 'degC').replace('µ', 'u');

export const rpm = (speed: number): number => (speed * 30) / Math.PI;

export const angleDegrees = (angle: number): number => (angle * 180) / Math.PI;

export const degreesText = (angle: number): string => `${Math.round(angleDegrees(angle))}°`;
