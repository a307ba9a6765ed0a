/**
 * A periodic curve through given points that overshoots nowhere: piecewise cubic, its slope continuous
 * (`cubic-hermite.ts`). Between equal values the curve is level, and it leaves a level stretch with slope zero.
 */
import { hermiteValue, monotoneSlope } from './cubic-hermite.ts';

export interface PeriodicCubic {
  value(x: number): number;
}

/** Through (x, y), x ascending; the last x is one period after the first and repeats its y. At least three points. */
export function periodicCubic(x: readonly number[], y: readonly number[]): PeriodicCubic {
  const nodes = Float64Array.from(x);
  const values = Float64Array.from(y);
  const slopes = periodicSlopes(nodes, values);
  const first = nodes[0]!;
  const period = nodes.at(-1)! - first;
  return {
    value: (at) => {
      const since = (at - first) % period;
      return hermiteValue(nodes, values, slopes, first + (since < 0 ? since + period : since));
    },
  };
}

function periodicSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length - 1;
  const slopes = new Float64Array(n + 1);
  for (let i = 0; i <= n; i += 1) {
    const after = i % n;
    const before = (i + n - 1) % n;
    const h = x[after + 1]! - x[after]!;
    const hBefore = x[before + 1]! - x[before]!;
    const secant = (y[after + 1]! - y[after]!) / h;
    const secantBefore = (y[before + 1]! - y[before]!) / hBefore;
    slopes[i] = monotoneSlope(hBefore, secantBefore, h, secant);
  }
  return slopes;
}
