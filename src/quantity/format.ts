/**
 * Values as people read them: 0.05 m is "50 mm", or "1.969 in" inside `inUnits('imperial', …)`. Every text made here can be
 * read back by `parseQuantity`.
 */
import type { Dimension } from '../kinds/parameter.ts';
import { dimensions, type DisplayUnit } from './dimensions.ts';
import { unitSystem, type UnitSystem } from './unit-system.ts';

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
    return formatIn(displayUnit(sizedBy, dimension), end, dimension, {
      digits: unitSystem() === 'metric' ? 6 : 4,
    });
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

/** One unit for all values of a column or an axis, whatever their size. */
export interface ColumnUnit {
  readonly label: string;
  /** From SI; of a pressure, what it is above another. */
  readonly of: (value: number) => number;
  /** Decimals that are worth showing in a column. */
  readonly decimals: number;
}

/** By dimension: the unit's label and its decimals. */
const columns = {
  metric: {
    length: ['mm', 1],
    area: ['mm²', 1],
    volume: ['cm³', 1],
    'moment of inertia': ['kg·cm²', 1],
    'pressure difference': ['bar', 2],
    torque: ['N·m', 2],
    'volume flow': ['L/min', 1],
    'rotational speed': ['rpm', 1],
  },
  imperial: {
    length: ['in', 3],
    area: ['in²', 4],
    volume: ['in³', 2],
    'moment of inertia': ['lb·in²', 1],
    'pressure difference': ['psi', 1],
    torque: ['lbf·ft', 2],
    'volume flow': ['cfm', 2],
    'rotational speed': ['rpm', 1],
  },
} as const satisfies Readonly<Record<UnitSystem, Partial<Record<Dimension, readonly [string, number]>>>>;

export function columnUnit(dimension: keyof (typeof columns)['metric']): ColumnUnit {
  const [label, decimals] = columns[unitSystem()][dimension];
  const unit = displaysOf(dimension).find((own) => own.label === label);
  if (unit === undefined) throw new Error(`${label} is no unit of ${dimension}`);
  return { label, decimals, of: (value) => value / unit.size };
}

function displaysOf(dimension: Dimension): readonly [DisplayUnit, ...DisplayUnit[]] {
  const { display, imperial } = dimensions[dimension];
  return unitSystem() === 'imperial' ? (imperial ?? display) : display;
}

function displayUnit(value: number, dimension: Dimension): DisplayUnit {
  const display = displaysOf(dimension);
  const magnitude = Math.abs(value) * (1 + 1e-9);
  return display.findLast((unit) => magnitude >= unit.from) ?? display[0];
}

function formatIn(unit: DisplayUnit, value: number, dimension: Dimension, display: Display): string {
  if (dimension === 'pressure' && display.atmosphere !== undefined)
    return `${((value - display.atmosphere) / unit.size).toFixed(columnUnit('pressure difference').decimals)} ${unit.label} gauge`;
  const number = formatNumber((value - (unit.zero ?? 0)) / unit.size, display.digits);
  const space = unit.label === '°' ? '' : ' ';
  return number + space + unit.label + (dimension === 'pressure' ? ' absolute' : '');
}

function rangeText(min: number, max: number, low: string, high: string): string {
  if (min === -Infinity) return max === Infinity ? 'of any size' : `of at most ${high}`;
  return max === Infinity ? `of at least ${low}` : `from ${low} to ${high}`;
}
