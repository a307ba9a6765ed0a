/** How far all passages are open: asked once per crank angle and speed, then kept for any pressures. */
import * as engine from './engine-seat.ts';
import {
  LAW_LENGTH,
  OPENING_ANGLE,
  OPENING_SPEED,
  TABLE_BEGINS,
  TABLE_ELSEWHERE,
  TABLE_LAG,
  TABLE_LENGTH,
  TABLE_SEGMENTS,
  TABLE_STARTS,
  TABLE_TARGET,
} from './header.ts';
import { EXCHANGE } from './fixed-places.ts';
import { hostOpening } from './host.ts';
import { at, intAt, put, toIndex, type Index } from './memory.ts';
import { wrappedAngle } from './tables.ts';

/** Openings [m², 1/m³ or 1] at a crank angle [rad] and a speed ≥ 0 [rad/s]. */
export function setOpenings(angle: number, speed: number): void {
  const base = engine.base;
  const memory = engine.memory;
  const laws = intAt(engine.laws, 0);
  // Many states are looked at at one angle: stages of a step, and the step behind it.
  const isElsewhere = angle !== at(memory, OPENING_ANGLE);
  put(memory, OPENING_ANGLE, angle);
  put(memory, OPENING_SPEED, speed);
  if (!isElsewhere && laws === 0) return;
  const wrapped = wrappedAngle(angle);
  if (isElsewhere) setTabulated(wrapped);
  for (let k = 0, law = engine.laws + 1; k < laws; k += 1, law += LAW_LENGTH) {
    put(EXCHANGE, 0, wrapped - at(law, 1));
    put(EXCHANGE, 1, speed);
    hostOpening(k);
    put(base, intAt(law, 0), Math.max(0, at(EXCHANGE, 0)));
  }
}

function setTabulated(angle: number): void {
  const tables = engine.tables;
  const base = engine.base;
  const count = intAt(tables, 0);
  for (let k = 0, table = tables + 1; k < count; k += 1, table += intAt(table, TABLE_LENGTH)) {
    const since = wrappedAngle(angle - at(table, TABLE_LAG) - at(table, TABLE_BEGINS));
    put(
      base,
      intAt(table, TABLE_TARGET),
      Math.max(0, at(table, TABLE_ELSEWHERE) + segmentValue(table, since)),
    );
  }
}

function segmentValue(table: Index, x: number): number {
  const segments = intAt(table, TABLE_SEGMENTS);
  const starts = table + TABLE_STARTS;
  if (!(x > at(starts, 0) && x < at(starts, segments))) return 0;
  let s = 0;
  while (x >= at(starts, s + 1)) s += 1;
  const fromStart = x - at(starts, s);
  const fromEnd = at(starts, s + 1) - x;
  const half = fromStart <= fromEnd ? 2 * s : 2 * s + 1;
  const cells = starts + segments + 1;
  const firstNodes = cells + 2 * segments;
  const count: number = intAt(cells, half);
  const u = count * Math.sqrt((2 * Math.min(fromStart, fromEnd)) / (fromStart + fromEnd));
  const cell = u < count ? Math.floor(u) : count - 1;
  return hermite(firstNodes + 2 * segments + intAt(firstNodes, half) + 2 * toIndex(cell), u - cell);
}

/** Between two nodes, each a value and a slope. */
function hermite(node: Index, w: number): number {
  const v = 1 - w;
  const left = at(node, 0);
  const rise = at(node, 2) - left;
  // From the left, so that a constant comes out to the last bit.
  return left + w * (rise + v * (v * (at(node, 1) - rise) - w * (at(node, 3) - rise)));
}
