/** Sines, powers and the exponential from the tables in the memory; and angles within a turn. */
import {
  CELLS_OF_OCTAVE,
  COSINE_TABLE,
  LEAST_POWER,
  MOST_POWER,
  OCTAVE_NODES,
  OCTAVE_TABLE,
  PLACES_OF_OCTAVE,
  PLACES_OF_TURN,
  POWER_TABLE,
  ROOT_TABLE,
  SINE_TABLE,
} from './fixed-places.ts';
import { at, exponentOf, put, toIndex, type Index } from './memory.ts';

/** In digits: a quotient of whole numbers would be one to the compiler. */
const SIXTH = 0.166_666_666_666_666_66;
const TWENTY_FOURTH = 0.041_666_666_666_666_664;
const HUNDRED_TWENTIETH = 0.008_333_333_333_333_333;

const FULL_TURN = 6.283_185_307_179_586;

/** The same angle in [0, 2π), as src/parts/crank-positions.ts has it. */
export function wrappedAngle(angle: number): number {
  if (angle >= 0 && angle < FULL_TURN) return angle;
  if (angle >= FULL_TURN && angle < 2 * FULL_TURN) return angle - FULL_TURN;
  const rest = angle - FULL_TURN * Math.floor(angle / FULL_TURN);
  return rest < 0 || rest >= FULL_TURN ? 0 : rest;
}

const PER_RADIAN: number = PLACES_OF_TURN / FULL_TURN;
const STEP: number = FULL_TURN / PLACES_OF_TURN;

/** Sine and cosine, each into a word; right to 3e-16 for angles of a turn or two, and to their own rounding beyond. */
export function setSineCosine(angle: number, sine: Index, cosine: Index): void {
  // Of the angle without its sign, so that what turns the other way goes through the same numbers.
  const far = Math.abs(angle);
  const near = far < FULL_TURN ? far : far - FULL_TURN * Math.floor(far / FULL_TURN);
  const place = Math.round(near * PER_RADIAN);
  const d = near - place * STEP;
  const square = d * d;
  const sin = d * (1 - square * (SIXTH - square / 120));
  const cos = 1 - square * (0.5 - square / 24);
  const i = toIndex(place) & (PLACES_OF_TURN - 1);
  const sineThere = at(SINE_TABLE, i);
  const cosineThere = at(COSINE_TABLE, i);
  const positive = sineThere * cos + cosineThere * sin;
  put(sine, 0, angle < 0 ? -positive : positive);
  put(cosine, 0, cosineThere * cos - sineThere * sin);
}

const PLACES_PER_UNIT = 184.664_965_233_787_3;
const STEP_HIGH = 0.005_415_212_347_998_022;
const STEP_LOW = 1.265_508_608_332_543_8e-13;
const TO_WHOLE: number = 6_755_399_441_055_744;

/** eˣ for −44 < x ≤ 0, by the method of src/numerics/elementary/exponential.ts. */
export function exponential(x: number): number {
  const whole = x * PLACES_PER_UNIT + TO_WHOLE - TO_WHOLE;
  const k = toIndex(whole);
  const j = 2 * (k & (PLACES_OF_OCTAVE - 1));
  const r = x - whole * STEP_HIGH - whole * STEP_LOW;
  const square = r * r;
  const grown = r + square * (0.5 + r * SIXTH + square * (TWENTY_FOURTH + r * HUNDRED_TWENTIETH));
  const root = at(ROOT_TABLE, j);
  return (root + (at(ROOT_TABLE, j + 1) + root * grown)) * at(POWER_TABLE - LEAST_POWER, k >> 7);
}

/** Whether x^0.8 is in the tables: a Reynolds number well beyond any engine's is not. */
export function isTabulated(x: number): boolean {
  if (!(x > 0)) return false;
  const k = exponentOf(x) + 1;
  return k >= LEAST_POWER && k <= MOST_POWER;
}

/** x^0.8 of such an x, as src/numerics/wide-power-table.ts has it. */
export function powerOfFourFifths(x: number): number {
  const k = exponentOf(x) + 1;
  const within = x * at(POWER_TABLE - LEAST_POWER, -k);
  return (
    at(OCTAVE_TABLE - LEAST_POWER, k) *
    cubic(OCTAVE_NODES, CELLS_OF_OCTAVE, (within - 0.5) * (2 * CELLS_OF_OCTAVE))
  );
}

/** A table of so many cells, at a place counted in cells; the first and the last piece go on beyond its ends. */
export function cubic(nodes: Index, cells: Index, u: number): number {
  const cell = Math.max(0, Math.min(cells - 1, Math.floor(u)));
  const node = nodes + 2 * toIndex(cell);
  const w = u - cell;
  const v = 1 - w;
  const left = at(node, 0);
  const right = at(node, 2);
  const rise = right - left;
  return v * left + w * right + w * v * (v * (at(node, 1) - rise) - w * (at(node, 3) - rise));
}
