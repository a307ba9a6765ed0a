/**
 * The stretch on which the receiver settles: the compressor runs all the time, and the pressure comes ever closer to the
 * one at which it gives just what is taken.
 */
import { bisected } from '../../numerics/bisection.ts';
import { exp } from '../../numerics/elementary/exponential.ts';
import { isSame, type Leg } from './leg.ts';
import { passingByLogarithm, pressureAt, type Passed, type Way } from './passing.ts';
import type { Shed } from './shed.ts';

/** Rows while what is left of the way shrinks to 1/e. */
const ROWS_PER_E_FOLD = 24;

/** After so many the receiver is as good as there: less than 1e-9 of the way is left. */
const E_FOLDS = 21;

/** A receiver that has settled is written down at so many even shares of the time there is. */
const HELD_ROWS = 200;

/** Since the leg began. */
interface Row extends Passed {
  readonly pressure: number;
}

/** From a pressure towards the one at which it settles, for that long [s]. */
export function settlingLeg(shed: Shed, from: number, to: number, longest: number): Leg {
  const way = { compressorOn: true, from, to };
  const start = { time: 0, delivered: 0, taken: 0, pressure: from };
  const nearing = isSame(from, to) ? [start] : rowsNearing(shed, way, start, longest);
  const rows = [...nearing, ...rowsHeld(nearing.at(-1)!, shed.demand(to), longest)];
  const { time: duration, delivered, taken, pressure } = rows.at(-1)!;
  return {
    compressorOn: true,
    duration,
    delivered,
    taken,
    stored: (pressure - from) * shed.massPerPascal,
    rows: () => ({ time: rows.map(({ time }) => time), pressure: rows.map(({ pressure }) => pressure) }),
  };
}

function rowsNearing(shed: Shed, way: Way, start: Row, longest: number): readonly Row[] {
  const between = passingByLogarithm(shed, way);
  const rows = [start];
  for (let i = 0; i < E_FOLDS * ROWS_PER_E_FOLD && rows.at(-1)!.time < longest; i += 1) {
    const before = rows.at(-1)!;
    const [begin, whole] = [i / ROWS_PER_E_FOLD, (i + 1) / ROWS_PER_E_FOLD];
    const after = (end: number): Row => {
      const { time, delivered, taken } = between(begin, end);
      return {
        time: before.time + time,
        delivered: before.delivered + delivered,
        taken: before.taken + taken,
        pressure: pressureAt(way, exp(-end)),
      };
    };
    const next = after(whole);
    if (next.time <= longest) rows.push(next);
    else {
      const end = bisected((end) => after(end).time < longest, begin, whole);
      rows.push({ ...after(end), time: longest });
    }
  }
  return rows;
}

/** What has settled, held until a time [s] at which the compressor still gives what is taken [kg/s]. */
function rowsHeld(settled: Row, flow: number, until: number): readonly Row[] {
  const rest = until - settled.time;
  if (rest <= 0) return [];
  const count = Math.ceil((HELD_ROWS * rest) / until);
  return Array.from({ length: count }, (_, i) => {
    const since = ((i + 1) * rest) / count;
    return {
      time: i + 1 < count ? settled.time + since : until,
      delivered: settled.delivered + flow * since,
      taken: settled.taken + flow * since,
      pressure: settled.pressure,
    };
  });
}
