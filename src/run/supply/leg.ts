/** One stretch of the receiver's pressure from one to another, the compressor on or off throughout. */
import { passing, pressureAt, type Way } from './passing.ts';
import type { Shed } from './shed.ts';

export interface Leg {
  readonly compressorOn: boolean;
  /** [s]; Infinity when its end is not reached in any time that matters. */
  readonly duration: number;
  /** Mass that the compressor delivered, that the engine took, and by which the receiver gained [kg]. */
  readonly delivered: number;
  readonly taken: number;
  readonly stored: number;
  /** Reckoned when asked for, which a verdict does not. */
  readonly rows: () => LegRows;
}

/** Time since the leg began [s] and pressure [Pa], from its beginning to its end. */
export interface LegRows {
  readonly time: readonly number[];
  readonly pressure: readonly number[];
}

/** A row for each of so many even shares of the way. */
const ROWS = 24;

/** Pressures are the same when they differ by less than this share. */
const SAME = 1e-9;

/** Ten years: what takes longer never happens [s]. */
const NEVER = 3e8;

export const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * b;

/** From one pressure to another that lies that way. */
export function legTo(shed: Shed, compressorOn: boolean, from: number, to: number): Leg {
  const way = { compressorOn, from, to };
  if (isSame(from, to)) return standing(way, 0);
  const between = passing(shed, way);
  const { time: duration, delivered, taken } = between(0, 1);
  if (duration >= NEVER) return standing(way, Infinity);
  return {
    compressorOn,
    duration,
    delivered,
    taken,
    stored: (to - from) * shed.massPerPascal,
    rows: () => {
      const time = [0];
      for (let i = 1; i < ROWS; i += 1)
        time.push(time.at(-1)! + between(1 - i / ROWS, 1 - (i - 1) / ROWS).time);
      const pressure = time.map((_, i) => pressureAt(way, 1 - i / ROWS));
      return { time: [...time, duration], pressure: [...pressure, to] };
    },
  };
}

/** A leg on which nothing happens. */
const standing = ({ compressorOn, from }: Way, duration: number): Leg => ({
  compressorOn,
  duration,
  delivered: 0,
  taken: 0,
  stored: 0,
  rows: () => ({
    time: duration > 0 ? [0, duration] : [0],
    pressure: duration > 0 ? [from, from] : [from],
  }),
});
