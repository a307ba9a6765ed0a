/**
 * A function of one variable, smooth between known breakpoints, tabulated once and looked up without allocation.
 *
 * Overlaps of round edges start as δ^1.5 at their breakpoints. Each segment is therefore halved, and either half sampled at
 * nodes whose distance from the breakpoint grows as a square: in its root u the function is smooth, and interpolated by
 * cubic Hermite pieces with fourth-order slopes. The error falls with the fourth power of the node count. Outside the table
 * the value is zero.
 */

export interface SegmentTable {
  readonly starts: Float64Array;
  readonly cells: number;
  /** Half segment by half segment, value and slope of each node by turns. */
  readonly nodes: Float64Array;
}

/** Cells of each half segment, unless said otherwise. */
const CELLS = 48;

/** Tabulates `f` over ascending breakpoints; at least two. */
export function segmentTable(
  f: (x: number) => number,
  breakpoints: readonly number[],
  cells = CELLS,
): SegmentTable {
  const starts = Float64Array.from(breakpoints);
  const segments = starts.length - 1;
  const row = 2 * (cells + 1);
  const nodes = new Float64Array(2 * row * segments);
  for (let s = 0; s < segments; s += 1) {
    const half = (starts[s + 1]! - starts[s]!) / 2;
    writeHalf((u) => f(starts[s]! + half * u * u), cells, nodes.subarray(2 * s * row));
    writeHalf((u) => f(starts[s + 1]! - half * u * u), cells, nodes.subarray((2 * s + 1) * row));
  }
  return { starts, cells, nodes };
}

/** Nodes from a breakpoint, u = 0, to the middle of its segment, u = 1, with slopes per node spacing. */
function writeHalf(g: (u: number) => number, cells: number, nodes: Float64Array): void {
  // Beyond the middle the function goes on as smoothly.
  const values = Float64Array.from({ length: cells + 3 }, (_, i) => g(i / cells));
  for (let i = 0; i <= cells; i += 1) {
    nodes[2 * i] = values[i]!;
    nodes[2 * i + 1] = slopeAt(values, i);
  }
}

/** Differences of the fourth order, one-sided next to the breakpoint. */
function slopeAt(values: Float64Array, i: number): number {
  const at = (k: number): number => values[k]!;
  if (i === 0) return (-25 * at(0) + 48 * at(1) - 36 * at(2) + 16 * at(3) - 3 * at(4)) / 12;
  if (i === 1) return (-3 * at(0) - 10 * at(1) + 18 * at(2) - 6 * at(3) + at(4)) / 12;
  return (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
}

export function segmentValue({ starts, cells, nodes }: SegmentTable, x: number): number {
  const segments = starts.length - 1;
  if (!(x > starts[0]! && x < starts[segments]!)) return 0;
  let s = 0;
  while (x >= starts[s + 1]!) s += 1;
  const fromStart = x - starts[s]!;
  const fromEnd = starts[s + 1]! - x;
  const u = cells * Math.sqrt((2 * Math.min(fromStart, fromEnd)) / (fromStart + fromEnd));
  const i = u < cells ? Math.floor(u) : cells - 1;
  const half = fromStart <= fromEnd ? 2 * s : 2 * s + 1;
  return hermite(nodes, 2 * (half * (cells + 1) + i), u - i);
}

function hermite(nodes: Float64Array, k: number, w: number): number {
  const v = 1 - w;
  const left = nodes[k]!;
  const right = nodes[k + 2]!;
  const rise = right - left;
  return v * left + w * right + w * v * (v * (nodes[k + 1]! - rise) - w * (nodes[k + 3]! - rise));
}
