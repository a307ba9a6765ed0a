/**
 * The half segments of a table while it is made: each is sampled between its breakpoint, u = 0, and the middle of its
 * segment, u = 1, at places that go as u². The error falls with the fourth power of the node count; nodes are doubled until
 * the new ones lie where the old ones said.
 */
import { hermite, type SegmentTable } from './segment-table.ts';

/** Cells of a half segment to begin with. */
const FEWEST_CELLS = 6;

/** Slopes at the last nodes go by two values beyond them. */
const valuesFor = (cells: number): number => cells + 3;
const nodesFor = (cells: number): number => 2 * (cells + 1);

/**
 * Error allowed, as a share of the largest value in the half segment. Twice the nodes have a sixteenth of the error that
 * they find in the fewer.
 */
const CLOSENESS = 1e-6;
const GAIN = 16;

/** What is so small a share of the largest value of all counts as nothing: rounding where a port is shut. */
const NOTHING = 1e-12;

/** To work in, again and again: arrays of its own for each table would cost more than what is done in them. */
class Room {
  /** As first sampled, half segment by half segment. */
  coarse: Float64Array = new Float64Array(512);
  /** Of the half segment at hand. */
  values: Float64Array = new Float64Array(128);
  /** Half segment by half segment. */
  nodes: Float64Array = new Float64Array(2048);
}

const spare: Room[] = [];

function longEnough(array: Float64Array, length: number): Float64Array {
  if (length <= array.length) return array;
  const longer = new Float64Array(2 * length);
  longer.set(array);
  return longer;
}

export class HalfSegments {
  private readonly law: (x: number) => number;
  private readonly breakpoints: readonly number[];
  private readonly mostCells: number;
  private readonly nothing: number;
  private readonly room = spare.pop() ?? new Room();
  private readonly cells: number[] = [];
  private readonly offsets: number[] = [];
  /** Of the nodes so far. */
  private length = 0;

  /** Of `law` between ascending breakpoints. */
  constructor(law: (x: number) => number, breakpoints: readonly number[], mostCells: number) {
    this.law = law;
    this.breakpoints = breakpoints;
    this.mostCells = mostCells;
    const halves = 2 * (breakpoints.length - 1);
    this.nothing = NOTHING * this.sample(halves);
    for (let half = 0; half < halves; half += 1) this.tabulate(half);
  }

  /** Adds a half segment over which the value stays the same. */
  addSteady(value: number): void {
    this.makeRoom(1);
    const { nodes } = this.room;
    const start = this.length;
    nodes[start] = value;
    nodes[start + 1] = 0;
    nodes[start + 2] = value;
    nodes[start + 3] = 0;
    this.add(1);
  }

  /** Adds one that is like another. */
  addAgain(half: number): void {
    this.cells.push(this.cells[half]!);
    this.offsets.push(this.offsets[half]!);
  }

  /** The table of all half segments so far; none can be added any more. */
  table(starts: readonly number[]): SegmentTable {
    const { room, cells, offsets } = this;
    spare.push(room);
    return { starts, cells, offsets, nodes: room.nodes.slice(0, this.length) };
  }

  /** Samples all of them, coarsely; the largest value that is met. */
  private sample(halves: number): number {
    const { law, room } = this;
    const count = valuesFor(FEWEST_CELLS);
    const coarse = longEnough(room.coarse, count * halves);
    room.coarse = coarse;
    let largest = 0;
    for (let half = 0, k = 0; half < halves; half += 1)
      for (let i = 0; i < count; i += 1, k += 1) {
        const value = law(this.placeAt(half, i / FEWEST_CELLS));
        coarse[k] = value;
        largest = Math.max(largest, Math.abs(value));
      }
    return largest;
  }

  private tabulate(half: number): void {
    const { law } = this;
    this.makeRoom(this.mostCells);
    const { values } = this.room;
    // A valve that stands still needs no table.
    if (this.isSteady(half)) {
      this.addSteady(values[0]!);
      return;
    }
    let cells = FEWEST_CELLS;
    let agrees = false;
    this.writeNodes(cells);
    while (!agrees && 2 * cells <= this.mostCells) {
      cells *= 2;
      for (let i = valuesFor(cells) - 1; i > 0; i -= 1)
        values[i] = i % 2 === 0 ? values[i / 2]! : law(this.placeAt(half, i / cells));
      agrees = this.agreesBetween(cells);
      this.writeNodes(cells);
    }
    this.add(cells);
  }

  /** Takes the coarse values of a half segment; whether they are all alike. */
  private isSteady(half: number): boolean {
    const { coarse, values } = this.room;
    const count = valuesFor(FEWEST_CELLS);
    let isSteady = true;
    for (let i = 0; i < count; i += 1) {
      const value = coarse[half * count + i]!;
      values[i] = value;
      isSteady &&= value === values[0];
    }
    return isSteady;
  }

  private makeRoom(cells: number): void {
    const { room } = this;
    room.values = longEnough(room.values, valuesFor(cells));
    room.nodes = longEnough(room.nodes, this.length + nodesFor(cells));
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

  /** Values, and slopes by differences of the fourth order, one-sided next to the breakpoint. */
  private writeNodes(cells: number): void {
    const { values, nodes } = this.room;
    const start = this.length;
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
  private agreesBetween(cells: number): boolean {
    const { values, nodes } = this.room;
    let largest = this.nothing;
    let error = 0;
    for (let i = 1; i < cells; i += 2) {
      largest = Math.max(largest, Math.abs(values[i]!));
      error = Math.max(error, Math.abs(values[i]! - hermite(nodes, this.length + i - 1, 0.5)));
    }
    return error <= GAIN * CLOSENESS * largest;
  }
}
