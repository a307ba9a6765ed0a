/**
 * A function of one variable, smooth between known breakpoints, tabulated once and looked up without allocation.
 *
 * Overlaps of round edges start as δ^1.5 at their breakpoints. Each segment is therefore halved, and either half sampled at
 * nodes whose distance from the breakpoint grows as a square: in its root u the function is smooth, and interpolated by
 * cubic Hermite pieces with fourth-order slopes. The error falls with the fourth power of the node count; nodes are doubled
 * until the new ones lie where the old ones said. Outside the table the value is zero.
 */

export interface SegmentTable {
  readonly starts: Float64Array;
  /** Of every half segment, its cells and where its nodes begin. */
  readonly cells: Uint16Array;
  readonly offsets: Uint32Array;
  /** Half segment by half segment, value and slope of each node by turns. */
  readonly nodes: Float64Array;
}

/** Cells of a half segment to begin with, and at most, unless said otherwise. */
const FEWEST_CELLS = 6;
const MOST_CELLS = 48;

/**
 * Error allowed, as a share of the largest value in the half segment. Twice the nodes have a sixteenth of the error that
 * they find in the fewer.
 */
const CLOSENESS = 1e-6;
const GAIN = 16;

/** Tabulates `f` over ascending breakpoints; at least two. */
export function segmentTable(
  f: (x: number) => number,
  breakpoints: readonly number[],
  mostCells = MOST_CELLS,
): SegmentTable {
  const starts = Float64Array.from(breakpoints);
  const halves = Array.from({ length: 2 * (starts.length - 1) }, (_, h) => {
    const s = h >> 1;
    const half = (starts[s + 1]! - starts[s]!) / 2;
    const law =
      h % 2 === 0
        ? (u: number): number => f(starts[s]! + half * u * u)
        : (u: number): number => f(starts[s + 1]! - half * u * u);
    return halfNodes(law, mostCells);
  });
  const offsets = new Uint32Array(halves.length + 1);
  for (const [h, half] of halves.entries()) offsets[h + 1] = offsets[h]! + half.length;
  const nodes = new Float64Array(offsets[halves.length]!);
  for (const [h, half] of halves.entries()) nodes.set(half, offsets[h]);
  return { starts, cells: Uint16Array.from(halves, ({ length }) => length / 2 - 1), offsets, nodes };
}

/** Nodes from a breakpoint, u = 0, to the middle of its segment, u = 1, with slopes per node spacing. */
function halfNodes(g: (u: number) => number, mostCells: number): Float64Array {
  let cells = FEWEST_CELLS;
  // Beyond the middle the function goes on as smoothly.
  let values = Float64Array.from({ length: cells + 3 }, (_, i) => g(i / cells));
  let nodes = withSlopes(values, cells);
  while (2 * cells <= mostCells) {
    cells *= 2;
    values = Float64Array.from({ length: cells + 3 }, (_, i) =>
      i % 2 === 0 ? values[i / 2]! : g(i / cells),
    );
    const agrees = agreesBetween(nodes, values, cells);
    nodes = withSlopes(values, cells);
    if (agrees) break;
  }
  return nodes;
}

function withSlopes(values: Float64Array, cells: number): Float64Array {
  const nodes = new Float64Array(2 * (cells + 1));
  for (let i = 0; i <= cells; i += 1) {
    nodes[2 * i] = values[i]!;
    nodes[2 * i + 1] = slopeAt(values, i);
  }
  return nodes;
}

/** Whether values twice as dense are what the nodes say between them. */
function agreesBetween(nodes: Float64Array, values: Float64Array, cells: number): boolean {
  let largest = 0;
  let error = 0;
  for (let i = 1; i < cells; i += 2) {
    largest = Math.max(largest, Math.abs(values[i]!));
    error = Math.max(error, Math.abs(values[i]! - hermite(nodes, i - 1, 0.5)));
  }
  return error <= GAIN * CLOSENESS * largest;
}

/** Differences of the fourth order, one-sided next to the breakpoint. */
function slopeAt(values: Float64Array, i: number): number {
  const at = (k: number): number => values[k]!;
  if (i === 0) return (-25 * at(0) + 48 * at(1) - 36 * at(2) + 16 * at(3) - 3 * at(4)) / 12;
  if (i === 1) return (-3 * at(0) - 10 * at(1) + 18 * at(2) - 6 * at(3) + at(4)) / 12;
  return (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
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

function hermite(nodes: Float64Array, k: number, w: number): number {
  const v = 1 - w;
  const left = nodes[k]!;
  const rise = nodes[k + 2]! - left;
  // From the left, so that a constant comes out to the last bit.
  return left + w * (rise + v * (v * (nodes[k + 1]! - rise) - w * (nodes[k + 3]! - rise)));
}
