/**
 * A function of one variable, smooth between known breakpoints, tabulated once and looked up without allocation.
 *
 * Overlaps of round edges start as δ^1.5 at their breakpoints. Each segment is therefore halved, and either half sampled at
 * nodes whose distance from the breakpoint grows as a square: in its root u the function is smooth, and interpolated by
 * cubic Hermite pieces with fourth-order slopes. The error falls with the fourth power of the node count; nodes are doubled
 * until the new ones lie where the old ones said. Outside the table the value is zero.
 */
import { HalfSegments, hermite } from './half-segments.ts';

export interface SegmentTable {
  readonly starts: readonly number[];
  /** Of every half segment, its cells and where its nodes begin. Halves that are alike may have the same nodes. */
  readonly cells: readonly number[];
  readonly offsets: readonly number[];
  /** Value and slope of each node by turns. */
  readonly nodes: Float64Array;
}

/** Cells of a half segment at most, unless said otherwise. */
const MOST_CELLS = 48;

/** Tabulates `law` over ascending breakpoints; at least two. */
export function segmentTable(
  law: (x: number) => number,
  breakpoints: readonly number[],
  mostCells = MOST_CELLS,
): SegmentTable {
  const halves = new HalfSegments(law, breakpoints, mostCells);
  const cells: number[] = [];
  const offsets: number[] = [];
  for (let half = 0; half < 2 * (breakpoints.length - 1); half += 1) {
    offsets.push(halves.length);
    cells.push(halves.tabulate(half));
  }
  return { starts: breakpoints, cells, offsets, nodes: halves.nodes() };
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
