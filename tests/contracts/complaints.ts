/** Small helpers for contracts: a contract is a function from a thing to what it does wrong, in words. */

/** The sentence when the condition fails, else nothing. */
export const unless = (holds: boolean, complaint: string): string[] => (holds ? [] : [complaint]);

/** Each distinct complaint once, said of something. */
export const about = (what: string, complaints: readonly string[]): string[] =>
  [...new Set(complaints)].map((complaint) => `${what}: ${complaint}`);

/** Values that occur more than once. */
export const repeated = <T>(values: readonly T[]): T[] =>
  values.filter((value, i) => values.indexOf(value) !== i);

/** n + 1 values from a to b, evenly. */
export const evenly = (a: number, b: number, n: number): number[] =>
  Array.from({ length: n + 1 }, (_, i) => a + ((b - a) * i) / n);

/** n + 1 values from a to b > a > 0, evenly in the logarithm. */
export const byRatio = (a: number, b: number, n: number): number[] =>
  evenly(Math.log(a), Math.log(b), n).map(Math.exp);

/** Largest step between neighbours. */
const largestStep = (values: readonly number[]): number =>
  values.slice(1).reduce((most, value, i) => Math.max(most, Math.abs(value - values[i]!)), 0);

/**
 * Whether a function is continuous on a range: refined eight times, its largest step must shrink. Only the square root at
 * its foot shrinks as slowly as a third.
 */
export function isContinuous(f: (x: number) => number, a: number, b: number, points: number): boolean {
  const coarse = largestStep(evenly(a, b, points).map(f));
  const fine = largestStep(evenly(a, b, 8 * points).map(f));
  return fine <= coarse / 2 || coarse === 0;
}

const largestBend = (values: readonly number[]): number =>
  values
    .slice(2)
    .reduce((most, value, i) => Math.max(most, Math.abs(value - 2 * values[i + 1]! + values[i]!)), 0);

/**
 * Whether a function has neither step nor kink on a range: second differences of a smooth one shrink sixteen times when
 * the spacing is quartered, those over a kink four times, those over a step not at all. `noise` is what rounding leaves.
 */
export function isSmooth(
  f: (x: number) => number,
  a: number,
  b: number,
  points: number,
  noise: number,
): boolean {
  const coarse = largestBend(evenly(a, b, points).map(f));
  const fine = largestBend(evenly(a, b, 4 * points).map(f));
  return fine <= coarse / 8 + noise;
}
