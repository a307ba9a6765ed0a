/** The values and nodes of one function while its table is made (half-segments.ts). */
import { hermite } from './segment-table.ts';

/** Cells of a half segment to begin with. */
export const FEWEST_CELLS = 6;

/** Slopes at the last nodes go by two values beyond them. */
export const valuesFor = (cells: number): number => cells + 3;

/** Numbers that the nodes take. */
export const nodesFor = (cells: number): number => 2 * (cells + 1);

/**
 * Error allowed, as a share of the largest value in the half segment. Twice the nodes have a sixteenth of the error that
 * they find in the fewer.
 */
const CLOSENESS = 1e-6;
const GAIN = 16;

/** What is so small a share of the largest value of all counts as nothing: rounding where a port is shut. */
const NOTHING = 1e-12;

export class TableColumn {
  /** Of the half segment at hand. */
  values: Float64Array = new Float64Array(128);
  /** Value and slope of each node by turns, half segment by half segment. */
  nodes: Float64Array = new Float64Array(2048);
  /** As first sampled, half segment by half segment. */
  private coarse: Float64Array = new Float64Array(512);
  private largest = 0;
  private mostCells = 0;

  begin(coarseValues: number, mostCells: number): void {
    this.coarse = longEnough(this.coarse, coarseValues);
    this.values = longEnough(this.values, valuesFor(mostCells));
    this.mostCells = mostCells;
    this.largest = 0;
  }

  sampled(place: number, value: number): void {
    this.coarse[place] = value;
    this.largest = Math.max(this.largest, Math.abs(value));
  }

  /** Takes the coarse values of a half segment; whether they are all alike. */
  take(half: number): boolean {
    const { coarse, values } = this;
    const count = valuesFor(FEWEST_CELLS);
    const first = coarse[half * count]!;
    let isSteady = true;
    for (let i = 0; i < count; i += 1) {
      const value = coarse[half * count + i]!;
      values[i] = value;
      isSteady &&= value === first;
    }
    return isSteady;
  }

  /** Makes room between values for as many new ones. */
  spread(cells: number): void {
    const { values } = this;
    for (let i = valuesFor(cells) - 1; i > 0; i -= 1) if (i % 2 === 0) values[i] = values[i / 2]!;
  }

  writeSteady(start: number, value: number): void {
    const nodes = this.roomAt(start, 1);
    nodes[start] = value;
    nodes[start + 1] = 0;
    nodes[start + 2] = value;
    nodes[start + 3] = 0;
  }

  /** Values, and slopes by differences of the fourth order, one-sided next to the breakpoint. */
  writeNodes(start: number, cells: number): void {
    const { values } = this;
    const nodes = this.roomAt(start, this.mostCells);
    const a = values[0]!;
    const b = values[1]!;
    const c = values[2]!;
    const d = values[3]!;
    const e = values[4]!;
    nodes[start] = a;
    nodes[start + 1] = (-25 * a + 48 * b - 36 * c + 16 * d - 3 * e) / 12;
    nodes[start + 2] = b;
    nodes[start + 3] = (-3 * a - 10 * b + 18 * c - 6 * d + e) / 12;
    for (let i = 2; i <= cells; i += 1) {
      nodes[start + 2 * i] = values[i]!;
      nodes[start + 2 * i + 1] =
        (8 * (values[i + 1]! - values[i - 1]!) - (values[i + 2]! - values[i - 2]!)) / 12;
    }
  }

  /** Whether values twice as dense are what the nodes written last say between them. */
  agreesBetween(start: number, cells: number): boolean {
    const { values, nodes } = this;
    let largest = NOTHING * this.largest;
    let error = 0;
    for (let i = 1; i < cells; i += 2) {
      largest = Math.max(largest, Math.abs(values[i]!));
      error = Math.max(error, Math.abs(values[i]! - hermite(nodes, start + i - 1, 0.5)));
    }
    return error <= GAIN * CLOSENESS * largest;
  }

  private roomAt(start: number, cells: number): Float64Array {
    this.nodes = longEnough(this.nodes, start + nodesFor(cells));
    return this.nodes;
  }
}

function longEnough(array: Float64Array, length: number): Float64Array {
  if (length <= array.length) return array;
  const longer = new Float64Array(2 * length);
  longer.set(array);
  return longer;
}
