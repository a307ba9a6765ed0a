/**
 * A function of one variable, smooth between known breakpoints, tabulated once (tabulating.ts) and looked up without
 * allocation.
 *
 * Overlaps of round edges start as δ^1.5 at their breakpoints. Each segment is therefore halved, and either half sampled at
 * nodes whose distance from the breakpoint grows as a square: in its root u the function is smooth, and interpolated by
 * cubic Hermite pieces with fourth-order slopes. Outside the table the value is zero.
 */

export interface SegmentTable {
  readonly starts: readonly number[];
  /** Of every half segment, its cells and where its nodes begin. Those that are alike may have the same nodes. */
  readonly cells: readonly number[];
  readonly offsets: readonly number[];
  /** Value and slope of each node by turns. */
  readonly nodes: Float64Array;
}

export function segmentValue({ starts, cells, offsets, nodes }: SegmentTable, x: number): number {
  const segments = starts.length - 1;
  if (!(x > starts[0]! && x < starts[segments]!)) return 0;
  let s = 0;
  while (x >= starts[s + 1]!) s += 1;
  const fromStart = x - starts[s]!;
  const fromEnd = starts[s + 1]! - x;
  const half = fromStart <= fromEnd ? 2 * s : 2 * s + 1;
  const count = cells[half]!;
  const u = count * Math.sqrt((2 * Math.min(fromStart, fromEnd)) / (fromStart + fromEnd));
  const i = u < count ? Math.floor(u) : count - 1;
  return hermite(nodes, offsets[half]! + 2 * i, u - i);
}

/** Between two nodes, the first of which stands at `k`, at a share w of the way. */
export function hermite(nodes: Float64Array, k: number, w: number): number {
  const v = 1 - w;
  const left = nodes[k]!;
  const rise = nodes[k + 2]! - left;
  // From the left, so that a constant comes out to the last bit.
  return left + w * (rise + v * (v * (nodes[k + 1]! - rise) - w * (nodes[k + 3]! - rise)));
}
