/**
 * Cube root and hypotenuse, alike to the last bit on every machine. Within 1 unit in the last place.
 *
 * The cube root of x = 8ᵏ m, m between 1 and 8, is 2ᵏ times that of m: a parabola, twice Halley's iteration
 * t ← t (t³ + 2 m)/(2 t³ + m), then Newton's from a root so short that its square is exact.
 */
import { square } from './whole-powers.ts';
import { exponentOf, LEAST_NORMAL, LIFT, powersOfTwo, ZEROTH } from './powers-of-two.ts';

export function cbrt(x: number): number {
  const size = Math.abs(x);
  if (!(size > 0 && size < Infinity)) return x;
  const value = size < LEAST_NORMAL ? rootOfNormal(size * LIFT) / 262_144 : rootOfNormal(size);
  return x < 0 ? -value : value;
}

function rootOfNormal(x: number): number {
  const exponent = exponentOf(x);
  const k = Math.floor(exponent / 3);
  const m = x * powersOfTwo[ZEROTH - exponent]! * powersOfTwo[ZEROTH + exponent - 3 * k]!;
  let t = 0.743 + m * (0.278 - m * 0.0155);
  t = halleys(t, m);
  t = Math.fround(halleys(t, m));
  const rest = m / (t * t);
  return (t + (t * (rest - t)) / (2 * t + rest)) * powersOfTwo[ZEROTH + k]!;
}

const halleys = (t: number, m: number): number => {
  const cube = t * t * t;
  return (t * (cube + 2 * m)) / (2 * cube + m);
};

/** Squares beyond would leave the range of doubles, or lose digits below it. */
const LARGE = 1e150;
const SMALL = 1e-140;
/** Brings either back: 2⁶⁰⁰. */
const SCALE = powersOfTwo[ZEROTH + 600]!;

/** √(x² + y²). */
export function hypot(x: number, y: number): number {
  const [a, b] = [Math.abs(x), Math.abs(y)];
  if (a === Infinity || b === Infinity) return Infinity;
  const larger = Math.max(a, b);
  if (larger > LARGE) return Math.sqrt(square(a / SCALE) + square(b / SCALE)) * SCALE;
  if (larger < SMALL) return Math.sqrt(square(a * SCALE) + square(b * SCALE)) / SCALE;
  return Math.sqrt(a * a + b * b);
}
