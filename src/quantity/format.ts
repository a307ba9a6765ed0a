/** Values as people read them: 0.05 m is "50 mm". Every text made here can be read back by `parseQuantity`. */
import type { Dimension } from '../kinds/parameter.ts';
import { dimensions, type DisplayUnit } from './dimensions.ts';

export interface Display {
  /** Significant digits, trailing zeros dropped. */
  readonly digits?: number;
  /** Absolute pressure of the surroundings, Pa. With it a pressure is shown as gauge, to hundredths of a bar. */
  readonly atmosphere?: number;
}

export function formatQuantity(value: number, dimension: Dimension, display: Display = {}): string {
  return formatIn(displayUnit(value, dimension), value, dimension, display);
}

/** "from 0 mm to 10 mm"; an infinite end is left out. */
export function formatRange(min: number, max: number, dimension: Dimension): string {
  const ends = [min, max] as const;
  const [low, high] = ends.map((end, index) => {
    const sizedBy = end === 0 ? (ends[1 - index] ?? end) : end;
    return formatIn(displayUnit(sizedBy, dimension), end, dimension, { digits: 6 });
  });
  return rangeText(min, max, low ?? '', high ?? '');
}

/** The same for pure numbers and counts. */
export function formatNumberRange(min: number, max: number): string {
  return rangeText(min, max, formatNumber(min, 6), formatNumber(max, 6));
}

function formatNumber(value: number, digits = 4): string {
  return String(Number(value.toPrecision(digits)));
}

function displayUnit(value: number, dimension: Dimension): DisplayUnit {
  const { display } = dimensions[dimension];
  const magnitude = Math.abs(value) * (1 + 1e-9);
  return display.findLast((unit) => magnitude >= unit.from) ?? display[0];
}

function formatIn(unit: DisplayUnit, value: number, dimension: Dimension, display: Display): string {
  if (dimension === 'pressure' && display.atmosphere !== undefined)
    return `${((value - display.atmosphere) / unit.size).toFixed(2)} ${unit.label} gauge`;
  const number = formatNumber((value - (unit.zero ?? 0)) / unit.size, display.digits);
  const space = unit.label === '°' ? '' : ' ';
  return number + space + unit.label + (dimension === 'pressure' ? ' absolute' : '');
}

function rangeText(min: number, max: number, low: string, high: string): string {
  if (min === -Infinity) return max === Infinity ? 'of any size' : `of at most ${high}`;
  return max === Infinity ? `of at least ${low}` : `from ${low} to ${high}`;
}
