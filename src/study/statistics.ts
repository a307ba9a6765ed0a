/** What many engines come to: shares with their uncertainty, quantiles, and what goes with what. */
import { quantileSorted, sampleCorrelation } from 'simple-statistics';
import { square } from '../numerics/elementary/whole-powers.ts';

export interface Share {
  readonly count: number;
  readonly of: number;
  /** Ends of the 95 % interval for the share that endless many engines would show. */
  readonly low: number;
  readonly high: number;
}

/** Two-sided 95 % point of the normal distribution. */
const Z = 1.959964;

/** Wilson's score interval (J. Am. Stat. Assoc. 22 (1927) 209), which stays within 0 and 1 and is of use at both ends. */
export function share(count: number, of: number): Share {
  const p = count / of;
  const spread = Z * Math.sqrt((p * (1 - p)) / of + square(Z) / (4 * square(of)));
  const [middle, scale] = [p + square(Z) / (2 * of), 1 + square(Z) / of];
  return {
    count,
    of,
    low: Math.max(0, (middle - spread) / scale),
    high: Math.min(1, (middle + spread) / scale),
  };
}

export interface Quantiles {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Values that 5 %, 50 % and 95 % stay below; `undefined` of nothing. */
export function quantiles(values: readonly number[]): Quantiles | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const at = (p: number): number => quantileSorted(sorted, p);
  return { low: at(0.05), median: at(0.5), high: at(0.95) };
}

const STEPS = 40;

/** Values that 0 %, 2.5 %, 5 % … 100 % stay below; of nothing, none. */
export function distribution(values: readonly number[]): number[] {
  if (values.length === 0) return [];
  const sorted = [...values].sort((a, b) => a - b);
  return Array.from({ length: STEPS + 1 }, (_, i) => quantileSorted(sorted, i / STEPS));
}

/** Places in the order from small to large; equal values share the mean of theirs. */
function ranks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const found = new Array<number>(values.length);
  for (let first = 0; first < order.length;) {
    let last = first;
    while (last + 1 < order.length && values[order[last + 1]!] === values[order[first]!]) last += 1;
    for (let k = first; k <= last; k += 1) found[order[k]!] = (first + last) / 2;
    first = last + 1;
  }
  return found;
}

/** Spearman's rank correlation; zero where one of the two does not vary. */
export function rankCorrelation(a: readonly number[], b: readonly number[]): number {
  if (a.length < 3 || new Set(a).size < 2 || new Set(b).size < 2) return 0;
  return sampleCorrelation(ranks(a), ranks(b));
}
