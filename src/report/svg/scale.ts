/** Linear scales and round tick marks for the drawings. */
import { log10 } from '../../numerics/elementary/logarithm.ts';
import { pow } from '../../numerics/elementary/power.ts';

export interface Scale {
  (value: number): number;
  readonly ticks: readonly number[];
}

export function linearScale(
  domain: readonly [number, number],
  range: readonly [number, number],
  ticks: number,
): Scale {
  const [low, high] = domain;
  const [from, to] = range;
  const place = (value: number): number => from + ((value - low) / (high - low)) * (to - from);
  return Object.assign(place, { ticks: roundTicks(low, high, ticks) });
}

/** About `count` round numbers between two ends. */
export function roundTicks(low: number, high: number, count: number): number[] {
  const step = roundStep((high - low) / count);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** The smallest of 1, 2, 5 times a power of ten that is not below `least`. */
function roundStep(least: number): number {
  const power = pow(10, Math.floor(log10(least)));
  return ([1, 2, 5].find((digit) => digit * power >= least * (1 - 1e-9)) ?? 10) * power;
}

/** Path through points, in hundredths of a unit. */
export function pathThrough(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`).join('');
}

export const coordinate = (value: number): string => String(Number(value.toFixed(2)) + 0);
