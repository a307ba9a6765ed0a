/** A course as columns over time: receiver, supply, speed, and whether the compressor runs. */
import type { Course } from './course.ts';
import type { LegRows } from './leg.ts';
import type { OfPressure } from './shed.ts';

/**
 * Columns of equal length. Where the compressor starts or stops, and where the engine stops, two rows have the same time:
 * the last before and the first after.
 */
export interface SupplyTrace {
  /** Since the receiver was full [s]. */
  readonly time: Float64Array;
  /** Before the regulator and behind it [Pa]. */
  readonly receiverPressure: Float64Array;
  readonly supplyPressure: Float64Array;
  /** [rad/s]; zero once the engine has stopped. */
  readonly speed: Float64Array;
  /** 1 while the compressor runs, else 0. */
  readonly compressorOn: Float64Array;
}

/** A course that repeats itself faster than this many rows can tell is cut off there. */
const MOST_ROWS = 20_000;

interface Row {
  readonly time: number;
  readonly pressure: number;
  readonly on: boolean;
  readonly turning: boolean;
}

/** A leg with its rows. */
type Stretch = LegRows & { readonly compressorOn: boolean };

/** From the full receiver to that time [s], or until the engine stops. */
export function supplyTrace(
  course: Course,
  until: number,
  of: { readonly speed: OfPressure; readonly supplyPressure: OfPressure },
): SupplyTrace {
  const rows = rowsOf(course, until);
  const column = (value: (row: Row) => number): Float64Array => Float64Array.from(rows, value);
  return {
    time: column(({ time }) => time),
    receiverPressure: column(({ pressure }) => pressure),
    supplyPressure: column(({ pressure }) => of.supplyPressure(pressure)),
    speed: column(({ pressure, turning }) => (turning ? of.speed(pressure) : 0)),
    compressorOn: column(({ on }) => (on ? 1 : 0)),
  };
}

function rowsOf({ legs, period, timeToStop }: Course, until: number): readonly Row[] {
  const rows: Row[] = [];
  const stretches = legs.map((leg) => ({ ...leg, ...leg.rows() }));
  let begins = 0;
  for (let i = 0; begins < until && rows.length < MOST_ROWS; i += 1) {
    const stretch = period === undefined ? stretches[i] : stretches[i % stretches.length];
    if (stretch === undefined) break;
    if (stretch.duration > 0) rows.push(...rowsOfStretch(stretch, begins, until));
    begins += stretch.duration;
  }
  const stopped = timeToStop !== undefined && timeToStop <= until;
  return stopped ? [...rows, { ...rows.at(-1)!, turning: false }] : rows;
}

/** The rows of a leg as far as they lie before `until`, and one just there if it goes beyond. */
function rowsOfStretch({ time, pressure, compressorOn: on }: Stretch, begins: number, until: number): Row[] {
  const rows: Row[] = [];
  for (const [i, since] of time.entries()) {
    const at = begins + since;
    if (at >= until) {
      // A leg begins before `until`, so there is a row before this one.
      const before = rows.at(-1)!;
      const share = (until - before.time) / (at - before.time);
      const between = before.pressure + share * (pressure[i]! - before.pressure);
      rows.push({ time: until, pressure: between, on, turning: true });
      return rows;
    }
    rows.push({ time: at, pressure: pressure[i]!, on, turning: true });
  }
  return rows;
}
