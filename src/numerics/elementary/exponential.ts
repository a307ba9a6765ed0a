/**
 * eˣ and eˣ − 1, alike to the last bit on every machine.
 *
 * With k the whole number nearest to 128 x/ln 2, k = 128 m + j:
 *
 *   eˣ = 2ᵐ 2^(j/128) eʳ,   r = x − k (ln 2)/128,   |r| ≤ (ln 2)/256
 *
 * The 128 roots are a table in two parts, eʳ − 1 a Taylor polynomial that leaves out r⁶/720 < 1e-18. eˣ is within 0.52 units in the
 * last place, or 1 below 1e-307, and eˣ − 1 within 1. The method is that of P. T. P. Tang, “Table-driven implementation of the exponential function in
 * IEEE floating-point arithmetic”, ACM TOMS 15 (1989) (from memory); table and constants are our own reckoning.
 */
import { product, squareRoot, type DoubleDouble } from './double-double.ts';
import { powersOfTwo, scaled, ZEROTH } from './powers-of-two.ts';

const PLACES = 128;
const PLACES_PER_UNIT = 184.664_965_233_787_3;
/** (ln 2)/128: 34 digits, so that a multiple is exact, and the rest. */
const STEP_HIGH = 0.005_415_212_347_998_022;
const STEP_LOW = 1.265_508_608_332_543_8e-13;
/** Beside 1.5 × 2⁵² there are no fractions: adding and taking it away rounds to a whole number. */
const TO_WHOLE = 6_755_399_441_055_744;
/** Up to here nothing runs over the top or out of digits. */
const PLAIN = 708;

/** Nearer to 0, eˣ − 1 goes by a longer polynomial; farther off, 1 is nothing beside eˣ or eˣ beside 1. */
const NEAR_ZERO = 1 / 16;
const FAR = 40;

/** 2^(j/128): the double, then what it leaves out. */
export const rootsOfTwo = new Float64Array(2 * PLACES);
const TWO: DoubleDouble = { high: 2, low: 0 };
const rootOfTwo = Array.from({ length: 7 }).reduce<DoubleDouble>((power) => squareRoot(power), TWO);
for (
  let j = 0, root: DoubleDouble = { high: 1, low: 0 };
  j < PLACES;
  j += 1, root = product(root, rootOfTwo)
) {
  rootsOfTwo[2 * j] = root.high;
  rootsOfTwo[2 * j + 1] = root.low;
}

export function exp(x: number): number {
  if (!(Math.abs(x) < PLAIN)) return farExponential(x, 0);
  const whole = x * PLACES_PER_UNIT + TO_WHOLE - TO_WHOLE;
  const k = whole | 0;
  const j = 2 * (k & (PLACES - 1));
  const r = x - whole * STEP_HIGH - whole * STEP_LOW;
  const root = rootsOfTwo[j]!;
  return (root + (rootsOfTwo[j + 1]! + root * grown(r))) * powersOfTwo[ZEROTH + (k >> 7)]!;
}

/** e^(x + rest), where the rest is small beside the last digit of x or not much larger. For powers. */
export function expOfSum(x: number, rest: number): number {
  if (!(Math.abs(x) < PLAIN)) return farExponential(x, rest);
  const whole = x * PLACES_PER_UNIT + TO_WHOLE - TO_WHOLE;
  const k = whole | 0;
  const j = 2 * (k & (PLACES - 1));
  const r = x - whole * STEP_HIGH - whole * STEP_LOW + rest;
  const root = rootsOfTwo[j]!;
  return (root + (rootsOfTwo[j + 1]! + root * grown(r))) * powersOfTwo[ZEROTH + (k >> 7)]!;
}

/** Whether it is still a number or not. */
function farExponential(x: number, rest: number): number {
  if (x > 710) return Infinity;
  if (x < -746) return 0;
  if (Number.isNaN(x)) return NaN;
  const whole = Math.round(x * PLACES_PER_UNIT);
  const j = 2 * (whole & (PLACES - 1));
  const root = rootsOfTwo[j]!;
  const r = x - whole * STEP_HIGH - whole * STEP_LOW + rest;
  return scaled(root + (rootsOfTwo[j + 1]! + root * grown(r)), whole >> 7);
}

/** eˣ − 1, also where x is small. */
export function expm1(x: number): number {
  if (Math.abs(x) < NEAR_ZERO) return x === 0 ? x : x + x * x * series(x);
  if (!(Math.abs(x) < FAR)) return x < 0 ? -1 : exp(x);
  const whole = x * PLACES_PER_UNIT + TO_WHOLE - TO_WHOLE;
  const k = whole | 0;
  const r = x - whole * STEP_HIGH - whole * STEP_LOW;
  const j = 2 * (k & (PLACES - 1));
  const power = powersOfTwo[ZEROTH + (k >> 7)]!;
  const root = rootsOfTwo[j]!;
  return root * power - 1 + (rootsOfTwo[j + 1]! + root * grown(r)) * power;
}

/** (eˣ − 1 − x)/x² for |x| < 1/16, without x⁸/10! < 1e-16. */
const series = (x: number): number => {
  const square = x * x;
  const first = 1 / 2 + x * (1 / 6) + square * (1 / 24 + x * (1 / 120));
  return first + square * square * (1 / 720 + x * (1 / 5040) + square * (1 / 40_320 + x * (1 / 362_880)));
};

/** eʳ − 1 for small r. */
const grown = (r: number): number => {
  const square = r * r;
  return r + square * (0.5 + r * (1 / 6) + square * (1 / 24 + r * (1 / 120)));
};
