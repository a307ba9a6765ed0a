/**
 * What piecewise cubics that overshoot nowhere are made of: a slope at each node, and the cubic between two of them.
 *
 * The slope is the weighted harmonic mean of the two neighbouring secants, zero where these differ in sign:
 *
 *   m = (w₁ + w₂) / (w₁/d₋ + w₂/d₊),  w₁ = 2h₊ + h₋,  w₂ = h₊ + 2h₋
 *
 * which keeps within the bounds for monotone cubics of Fritsch and Carlson (SIAM J. Numer. Anal. 17, 1980); the mean is
 * that of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984). Citations from memory.
 */

/** Slope at a node between a stretch of width h₋ and secant d₋ and one of width h₊ and secant d₊. */
export function monotoneSlope(hBefore: number, secantBefore: number, h: number, secant: number): number {
  if (secant * secantBefore <= 0) return 0;
  const w1 = 2 * h + hBefore;
  const w2 = h + 2 * hBefore;
  return (w1 + w2) / (w1 / secantBefore + w2 / secant);
}

/** Value at `place`, between the first and the last of the ascending nodes. */
export function hermiteValue(x: Float64Array, y: Float64Array, slopes: Float64Array, place: number): number {
  let low = 0;
  let high = x.length - 1;
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
