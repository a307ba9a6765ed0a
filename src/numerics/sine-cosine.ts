/**
 * Sine and cosine of one angle together: library functions reckon them one by one, and take a tenth of a derivative.
 *
 * From the nearest of 512 places on the circle by the addition theorems; the rest d, at most π/512, by Taylor series that
 * leave out d⁷/5040 < 1e-19 and d⁶/720 < 1e-16.
 */
import { cos, sin } from './elementary/trigonometric.ts';

const FULL_TURN = 2 * Math.PI;
const PLACES = 512;
const PER_RADIAN = PLACES / FULL_TURN;
const STEP = FULL_TURN / PLACES;

export const sines = Float64Array.from({ length: PLACES }, (_, i) => sin(i * STEP));
export const cosines = Float64Array.from({ length: PLACES }, (_, i) => cos(i * STEP));

/** Writes both at place k of their arrays; right to 3e-16 for angles of a turn or two, and to their own rounding beyond. */
export function writeSineCosine(angle: number, sine: Float64Array, cosine: Float64Array, k: number): void {
  // Of the angle without its sign, so that what turns the other way goes through the same numbers.
  const far = Math.abs(angle);
  const near = far < FULL_TURN ? far : far - FULL_TURN * Math.floor(far / FULL_TURN);
  const place = Math.round(near * PER_RADIAN);
  const d = near - place * STEP;
  const square = d * d;
  const sin = d * (1 - square * (1 / 6 - square / 120));
  const cos = 1 - square * (1 / 2 - square / 24);
  const i = place & (PLACES - 1);
  const positive = sines[i]! * cos + cosines[i]! * sin;
  sine[k] = angle < 0 ? -positive : positive;
  cosine[k] = cosines[i]! * cos - sines[i]! * sin;
}
