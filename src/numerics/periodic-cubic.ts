/**
 * A periodic curve through given points that overshoots nowhere: piecewise cubic, its slope continuous.
 *
 * Slopes by the weighted harmonic mean of the two neighbouring secants, zero where these differ in sign:
 *
 *   m_i = (w₁ + w₂) / (w₁/d_{i−1} + w₂/d_i),  w₁ = 2h_i + h_{i−1},  w₂ = h_i + 2h_{i−1}
 *
 * which keeps within the bounds for monotone cubics of Fritsch and Carlson (SIAM J. Numer. Anal. 17, 1980); the mean is
 * that of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984). Citations from memory. Between equal values the curve
 * is level, and it leaves a level stretch with slope zero.
 */

export interface PeriodicCubic {
  value(x: number): number;
}

/** Through (x, y), x ascending; the last x is one period after the first and repeats its y. At least three points. */
export function periodicCubic(x: readonly number[], y: readonly number[]): PeriodicCubic {
  const nodes = Float64Array.from(x);
  const values = Float64Array.from(y);
  const slopes = monotoneSlopes(nodes, values);
  return { value: (at) => lookUp(nodes, values, slopes, at) };
}

function monotoneSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length - 1;
  const slopes = new Float64Array(n + 1);
  for (let i = 0; i <= n; i += 1) {
    const after = i % n;
    const before = (i + n - 1) % n;
    const h = x[after + 1]! - x[after]!;
    const hBefore = x[before + 1]! - x[before]!;
    const secant = (y[after + 1]! - y[after]!) / h;
    const secantBefore = (y[before + 1]! - y[before]!) / hBefore;
    if (secant * secantBefore <= 0) continue;
    const w1 = 2 * h + hBefore;
    const w2 = h + 2 * hBefore;
    slopes[i] = (w1 + w2) / (w1 / secantBefore + w2 / secant);
  }
  return slopes;
}

function lookUp(x: Float64Array, y: Float64Array, slopes: Float64Array, at: number): number {
  const n = x.length - 1;
  const period = x[n]! - x[0]!;
  const since = (at - x[0]!) % period;
  const place = x[0]! + (since < 0 ? since + period : since);
  let low = 0;
  let high = n;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= place) low = middle;
    else high = middle;
  }
  const h = x[high]! - x[low]!;
  const w = (place - x[low]!) / h;
  const v = 1 - w;
  const rise = y[high]! - y[low]!;
  return (
    v * y[low]! + w * y[high]! + w * v * (v * (h * slopes[low]! - rise) - w * (h * slopes[high]! - rise))
  );
}
