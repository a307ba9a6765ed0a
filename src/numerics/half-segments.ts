/**
 * The half segments of tables while they are made: each is sampled between its breakpoint, u = 0, and the middle of its
 * segment, u = 1, at places that go as u². The error falls with the fourth power of the node count; nodes are doubled until
 * the new ones lie where the old ones said. Functions that are worked out together are sampled at the same places.
 */
import { FEWEST_CELLS, nodesFor, TableColumn, valuesFor } from './table-column.ts';
import type { SegmentTable } from './segment-table.ts';

/** Writes the values of one function, or of several that are worked out together, at x. */
export type Laws = (x: number, values: Float64Array) => void;

/** To work in, again and again: arrays of its own for each table would cost more than what is done in them. */
const spare: TableColumn[] = [];

export class HalfSegments {
  private readonly laws: Laws;
  private readonly breakpoints: readonly number[];
  private readonly mostCells: number;
  private readonly columns: readonly TableColumn[];
  /** The values at one place. */
  private readonly point: Float64Array;
  private readonly cells: number[] = [];
  private readonly offsets: number[] = [];
  /** Of the nodes of each so far. */
  private length = 0;

  /** Of so many functions between ascending breakpoints. */
  constructor(count: number, laws: Laws, breakpoints: readonly number[], mostCells: number) {
    this.laws = laws;
    this.breakpoints = breakpoints;
    this.mostCells = mostCells;
    this.point = new Float64Array(count);
    this.columns = Array.from({ length: count }, () => spare.pop() ?? new TableColumn());
    const halves = 2 * (breakpoints.length - 1);
    this.sample(halves);
    for (let half = 0; half < halves; half += 1) this.tabulate(half);
  }

  /** Adds a half segment over which the values stay as they are at x. */
  addSteadyAt(x: number): void {
    this.laws(x, this.point);
    for (let k = 0; k < this.columns.length; k += 1)
      this.columns[k]!.writeSteady(this.length, this.point[k]!);
    this.add(1);
  }

  /** Adds one that is like another. */
  addAgain(half: number): void {
    this.cells.push(this.cells[half]!);
    this.offsets.push(this.offsets[half]!);
  }

  /** The tables of all half segments so far, function by function; none can be added any more. */
  tables(starts: readonly number[]): readonly SegmentTable[] {
    const { columns, cells, offsets, length } = this;
    return columns.map((column) => {
      spare.push(column);
      return { starts, cells, offsets, nodes: column.nodes.slice(0, length) };
    });
  }

  /** Samples all of them, coarsely. */
  private sample(halves: number): void {
    const { columns, point } = this;
    const count = valuesFor(FEWEST_CELLS);
    for (const column of columns) column.begin(count * halves, this.mostCells);
    for (let half = 0, place = 0; half < halves; half += 1)
      for (let i = 0; i < count; i += 1, place += 1) {
        this.laws(this.placeAt(half, i / FEWEST_CELLS), point);
        for (let k = 0; k < columns.length; k += 1) columns[k]!.sampled(place, point[k]!);
      }
  }

  private tabulate(half: number): void {
    const { columns, point } = this;
    let isSteady = true;
    for (const column of columns) isSteady = column.take(half) && isSteady;
    // A valve that stands still needs no table.
    if (isSteady) {
      for (const column of columns) column.writeSteady(this.length, column.values[0]!);
      this.add(1);
      return;
    }
    let cells = FEWEST_CELLS;
    let agrees = false;
    for (const column of columns) column.writeNodes(this.length, cells);
    while (!agrees && 2 * cells <= this.mostCells) {
      cells *= 2;
      for (const column of columns) column.spread(cells);
      for (let i = 1; i < valuesFor(cells); i += 2) {
        this.laws(this.placeAt(half, i / cells), point);
        for (let k = 0; k < columns.length; k += 1) columns[k]!.values[i] = point[k]!;
      }
      agrees = true;
      for (const column of columns) {
        agrees = column.agreesBetween(this.length, cells) && agrees;
        column.writeNodes(this.length, cells);
      }
    }
    this.add(cells);
  }

  private add(cells: number): void {
    this.cells.push(cells);
    this.offsets.push(this.length);
    this.length += nodesFor(cells);
  }

  /** Of the root u of the way from a breakpoint, 0, to the middle of its segment, 1; and a little beyond. */
  private placeAt(half: number, u: number): number {
    const { breakpoints } = this;
    const segment = half >> 1;
    const from = breakpoints[segment]!;
    const to = breakpoints[segment + 1]!;
    const reach = ((to - from) / 2) * u * u;
    return half % 2 === 0 ? from + reach : to - reach;
  }
}
