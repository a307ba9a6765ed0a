/**
 * A curve through given points that overshoots nowhere and rises or falls only where they do: piecewise cubic, its slope
 * continuous (`cubic-hermite.ts`), level beyond either end.
 *
 * The slope at an end is that of the parabola through the last three points, limited as Fritsch and Carlson ask: zero
 * where it would turn back, and three secants at most where the secants differ in sign (form of the usual end rule for
 * monotone cubics, from memory).
 */
import { hermiteValue, monotoneSlope } from './cubic-hermite.ts';

export type Curve = (x: number) => number;

/** Through (x, y), x ascending. At least one point. */
export function monotoneCubic(x: readonly number[], y: readonly number[]): Curve {
  const nodes = Float64Array.from(x);
  const values = Float64Array.from(y);
  const first = nodes[0]!;
  const last = nodes.at(-1)!;
  if (first === last) return () => values[0]!;
  const slopes = monotoneSlopes(nodes, values);
  return (at) => hermiteValue(nodes, values, slopes, Math.min(last, Math.max(first, at)));
}

function monotoneSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length - 1;
  const widths = Float64Array.from({ length: n }, (_, i) => x[i + 1]! - x[i]!);
  const secants = widths.map((h, i) => (y[i + 1]! - y[i]!) / h);
  if (n === 1) return Float64Array.of(secants[0]!, secants[0]!);
  const slopes = new Float64Array(n + 1);
  for (let i = 1; i < n; i += 1)
    slopes[i] = monotoneSlope(widths[i - 1]!, secants[i - 1]!, widths[i]!, secants[i]!);
  slopes[0] = endSlope(widths[0]!, secants[0]!, widths[1]!, secants[1]!);
  slopes[n] = endSlope(widths[n - 1]!, secants[n - 1]!, widths[n - 2]!, secants[n - 2]!);
  return slopes;
}

/** Slope at the outer side of a stretch of width h and secant d that has a neighbour. */
function endSlope(h: number, secant: number, hNext: number, secantNext: number): number {
  const slope = ((2 * h + hNext) * secant - h * secantNext) / (h + hNext);
  if (slope * secant <= 0) return 0;
  const limit = 3 * Math.abs(secant);
  return secant * secantNext < 0 && Math.abs(slope) > limit ? 3 * secant : slope;
}
