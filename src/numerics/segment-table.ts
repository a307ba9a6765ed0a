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

/** What is so small a share of the largest value of all counts as nothing: rounding where a port is shut. */
const NOTHING = 1e-12;
const GAIN = 16;

/** Tabulates `f` over ascending breakpoints; at least two. */
export function segmentTable(
  f: (x: number) => number,
  breakpoints: readonly number[],
  mostCells = MOST_CELLS,
): SegmentTable {
  const starts = Float64Array.from(breakpoints);
  const laws = Array.from({ length: 2 * (starts.length - 1) }, (_, h): Law => {
    const s = h >> 1;
    const half = (starts[s + 1]! - starts[s]!) / 2;
    return h % 2 === 0 ? (u) => f(starts[s]! + half * u * u) : (u) => f(starts[s + 1]! - half * u * u);
  });
  const coarse = laws.map((law) => sampled(law, FEWEST_CELLS));
  const nothing = NOTHING * coarse.reduce((most, values) => Math.max(most, largestOf(values)), 0);
  const halves = laws.map((law, h) => halfNodes(law, coarse[h]!, mostCells, nothing));
  const offsets = new Uint32Array(halves.length + 1);
  for (const [h, half] of halves.entries()) offsets[h + 1] = offsets[h]! + half.length;
  const nodes = new Float64Array(offsets[halves.length]!);
  for (const [h, half] of halves.entries()) nodes.set(half, offsets[h]);
  return { starts, cells: Uint16Array.from(halves, ({ length }) => length / 2 - 1), offsets, nodes };
}

/** Of the root u of the way from a breakpoint, 0, to the middle of its segment, 1; and as smoothly a little beyond. */
type Law = (u: number) => number;

function sampled(law: Law, cells: number): Float64Array {
  const values = new Float64Array(cells + 3);
  for (let i = 0; i < values.length; i += 1) values[i] = law(i / cells);
  return values;
}

function largestOf(values: Float64Array): number {
  let largest = 0;
  for (const value of values) largest = Math.max(largest, Math.abs(value));
  return largest;
}

function halfNodes(law: Law, coarse: Float64Array, mostCells: number, nothing: number): Float64Array {
  const first = coarse[0]!;
  // A valve that stands still needs no table.
  if (coarse.every((value) => value === first)) return Float64Array.of(first, 0, first, 0);
  let cells = FEWEST_CELLS;
  let values = coarse;
  let nodes = withSlopes(values, cells);
  while (2 * cells <= mostCells) {
    const fewer = values;
    cells *= 2;
    values = new Float64Array(cells + 3);
    for (let i = 0; i < values.length; i += 1) values[i] = i % 2 === 0 ? fewer[i / 2]! : law(i / cells);
    const agrees = agreesBetween(nodes, values, cells, nothing);
    nodes = withSlopes(values, cells);
    if (agrees) break;
  }
  return nodes;
}

/** Values, and slopes by differences of the fourth order, one-sided next to the breakpoint. */
function withSlopes(values: Float64Array, cells: number): Float64Array {
  const nodes = new Float64Array(2 * (cells + 1));
  const a = values[0]!;
  const b = values[1]!;
  const c = values[2]!;
  const d = values[3]!;
  const e = values[4]!;
  nodes[1] = (-25 * a + 48 * b - 36 * c + 16 * d - 3 * e) / 12;
  nodes[3] = (-3 * a - 10 * b + 18 * c - 6 * d + e) / 12;
  for (let i = 2; i <= cells; i += 1)
    nodes[2 * i + 1] = (8 * (values[i + 1]! - values[i - 1]!) - (values[i + 2]! - values[i - 2]!)) / 12;
  for (let i = 0; i <= cells; i += 1) nodes[2 * i] = values[i]!;
  return nodes;
}

/** Whether values twice as dense are what the nodes say between them. */
function agreesBetween(nodes: Float64Array, values: Float64Array, cells: number, nothing: number): boolean {
  let largest = nothing;
  let error = 0;
  for (let i = 1; i < cells; i += 2) {
    largest = Math.max(largest, Math.abs(values[i]!));
    error = Math.max(error, Math.abs(values[i]! - hermite(nodes, i - 1, 0.5)));
  }
  return error <= GAIN * CLOSENESS * largest;
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
