/**
 * A function of one variable, smooth between known breakpoints, tabulated once and looked up without allocation.
 *
 * Overlaps of round edges start as δ^1.5 at their breakpoints. Each segment is therefore sampled at Chebyshev-spaced
 * nodes, in whose angle u the function is smooth, and interpolated by cubic Hermite pieces in u with fourth-order
 * slopes: the error falls with the fourth power of the node count. Outside the table the value is zero.
 */

export interface SegmentTable {
  value(x: number): number;
}

const NODES_PER_SEGMENT = 96;

/** Tabulates `f` over ascending breakpoints; at least two. */
export function segmentTable(f: (x: number) => number, breakpoints: readonly number[]): SegmentTable {
  const n = NODES_PER_SEGMENT;
  const starts = Float64Array.from(breakpoints);
  const segments = starts.length - 1;
  const values = new Float64Array(segments * (n + 1));
  const slopes = new Float64Array(values.length);
  for (let s = 0; s < segments; s += 1) {
    const own = values.subarray(s * (n + 1), (s + 1) * (n + 1));
    for (let i = 0; i <= n; i += 1) own[i] = f(nodeAt(starts[s]!, starts[s + 1]!, i / n));
    writeSlopes(own, slopes.subarray(s * (n + 1), (s + 1) * (n + 1)));
  }
  return { value: (x) => lookUp(starts, values, slopes, x) };
}

const nodeAt = (a: number, b: number, u: number): number => a + ((b - a) * (1 - Math.cos(Math.PI * u))) / 2;

/** Slope per node spacing: fourth-order central inside; beyond an end the function continues evenly (cosine map). */
function writeSlopes(values: Float64Array, slopes: Float64Array): void {
  const n = values.length - 1;
  const at = (i: number): number => values[i < 0 ? -i : i > n ? 2 * n - i : i]!;
  for (let i = 0; i <= n; i += 1) slopes[i] = (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
}

function lookUp(starts: Float64Array, values: Float64Array, slopes: Float64Array, x: number): number {
  const segments = starts.length - 1;
  if (!(x > starts[0]! && x < starts[segments]!)) return 0;
  let s = 0;
  while (x >= starts[s + 1]!) s += 1;
  const n = NODES_PER_SEGMENT;
  const t = (2 * (x - starts[s]!)) / (starts[s + 1]! - starts[s]!) - 1;
  const u = (n * Math.acos(-t)) / Math.PI;
  const i = Math.min(n - 1, Math.floor(u));
  return hermite(values, slopes, s * (n + 1) + i, u - i);
}

function hermite(values: Float64Array, slopes: Float64Array, k: number, w: number): number {
  const v = 1 - w;
  const rise = values[k + 1]! - values[k]!;
  return (
    v * values[k]! + w * values[k + 1]! + w * v * (v * (slopes[k]! - rise) - w * (slopes[k + 1]! - rise))
  );
}
