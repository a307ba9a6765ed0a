/**
 * The half segments of a table while it is made (segment-table.ts): each is sampled between its breakpoint, u = 0, and the
 * middle of its segment, u = 1, at places that go as u², and halved again until the new nodes lie where the old ones said.
 */

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

/** To work in, again and again: so many arrays for each table would cost more than what is done in them. */
class Room {
  /** As first sampled, half segment by half segment. */
  coarse: Float64Array = new Float64Array(512);
  /** Of the half segment at hand. */
  values: Float64Array = new Float64Array(128);
  /** Value and slope of each node by turns, half segment by half segment. */
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
  /** Of the nodes so far. */
  length = 0;
  private readonly law: (x: number) => number;
  private readonly breakpoints: readonly number[];
  private readonly mostCells: number;
  private readonly nothing: number;
  private readonly room = spare.pop() ?? new Room();

  constructor(law: (x: number) => number, breakpoints: readonly number[], mostCells: number) {
    this.law = law;
    this.breakpoints = breakpoints;
    this.mostCells = mostCells;
    const count = valuesFor(FEWEST_CELLS);
    const halves = 2 * (breakpoints.length - 1);
    const coarse = longEnough(this.room.coarse, count * halves);
    this.room.coarse = coarse;
    this.room.values = longEnough(this.room.values, valuesFor(mostCells));
    let largest = 0;
    for (let half = 0, k = 0; half < halves; half += 1)
      for (let i = 0; i < count; i += 1, k += 1) {
        const value = law(this.placeAt(half, i / FEWEST_CELLS));
        coarse[k] = value;
        largest = Math.max(largest, Math.abs(value));
      }
    this.nothing = NOTHING * largest;
  }

  /** Adds the nodes of a half segment; its cells. */
  tabulate(half: number): number {
    const { room, law } = this;
    const { values } = room;
    const count = valuesFor(FEWEST_CELLS);
    room.nodes = longEnough(room.nodes, this.length + nodesFor(this.mostCells));
    let isSteady = true;
    for (let i = 0; i < count; i += 1) {
      const value = room.coarse[half * count + i]!;
      values[i] = value;
      isSteady &&= value === values[0];
    }
    // A valve that stands still needs no table.
    if (isSteady) return this.addSteady(values[0]!);
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
    this.length += nodesFor(cells);
    return cells;
  }

  /** The nodes of all; nothing can be added any more. */
  nodes(): Float64Array {
    const { room, length } = this;
    spare.push(room);
    return room.nodes.slice(0, length);
  }

  /** Of the root u of the way from a breakpoint, 0, to the middle of its segment, 1; and a little beyond. */
  private placeAt(half: number, u: number): number {
    const { breakpoints } = this;
    const segment = half >> 1;
    const reach = (breakpoints[segment + 1]! - breakpoints[segment]!) / 2;
    return half % 2 === 0
      ? breakpoints[segment]! + reach * u * u
      : breakpoints[segment + 1]! - reach * u * u;
  }

  private addSteady(value: number): number {
    const { length, room } = this;
    room.nodes[length] = value;
    room.nodes[length + 1] = 0;
    room.nodes[length + 2] = value;
    room.nodes[length + 3] = 0;
    this.length += nodesFor(1);
    return 1;
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

/** Between two nodes, the first of which stands at `k`, at a share w of the way. */
export function hermite(nodes: Float64Array, k: number, w: number): number {
  const v = 1 - w;
  const left = nodes[k]!;
  const rise = nodes[k + 2]! - left;
  // From the left, so that a constant comes out to the last bit.
  return left + w * (rise + v * (v * (nodes[k + 1]! - rise) - w * (nodes[k + 3]! - rise)));
}
