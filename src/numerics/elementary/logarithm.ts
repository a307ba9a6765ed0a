/**
 * Logarithms, alike to the last bit on every machine.
 *
 * With x = 2ᵏ z, z between 0.6875 and 1.375, and f, the middle of the piece of a table that z lies in:
 *
 *   ln x = k ln 2 + ln f + ln(1 + r),   r = (z − f)/f,   |r| < 1/128
 *
 * Next to 1, f is 1 itself, so that nothing cancels there. ln(1 + r) is its Taylor polynomial without r¹²/12 < 1e-24 |r|.
 * Within 0.8 units in the last place. Where more is asked for, c, the inverse of f with 24 digits, stands in its place: then
 * r = z c − 1 comes out without loss from the upper and the lower digits of z.
 *
 * The method is akin to that of P. T. P. Tang, “Table-driven implementation of the logarithm function in IEEE floating-point
 * arithmetic”, ACM TOMS 16 (1990) (from memory); the tables are our own reckoning.
 */
import { exactSum, inverseTangentSeries, quotient, sum, type DoubleDouble } from './double-double.ts';
import { LEAST_NORMAL, LIFT, LIFT_EXPONENT, powersOfTwo, upperWord, ZEROTH } from './powers-of-two.ts';

const PLACES = 128;
/** The upper word of 0.6875, where the table begins. */
const FIRST = 0x3fe60000;
/** ln 2: 42 digits, so that a multiple is exact, and the rest. */
const LN2_HIGH = 0.693_147_180_559_890_3;
const LN2_LOW = 5.497_923_018_708_371e-14;
/** Beside it nothing is finer than 2⁻⁴², the last digit of LN2_HIGH: adding and taking it away rounds to that. */
const TO_SAME_DIGIT = 1536;

/** c, then −ln c to the last digit of LN2_HIGH, then what that leaves out. */
const inverses = new Float64Array(3 * PLACES);
/** The middle f of the piece, 1/f, then ln f to the last digit of LN2_HIGH, then what that leaves out. */
const middles = new Float64Array(4 * PLACES);
const NOTHING: DoubleDouble = { high: 0, low: 0 };
let last = 1;
let logOfLast = NOTHING;
for (let i = 0; i < PLACES; i += 1) {
  const belowOne = i < 80;
  const from = belowOne ? 0.6875 + i / 256 : 1 + (i - 80) / 128;
  const to = from + (belowOne ? 1 / 256 : 1 / 128);
  const middle = from === 1 || to === 1 ? 1 : (from + to) / 2;
  // From piece to piece, and anew from 1, where nothing may be left over.
  logOfLast = middle === 1 ? NOTHING : sum(logOfLast, logOfRatio(middle, last));
  last = middle;
  const inverse = Math.fround(1 / middle);
  // So short are both that their product is exact.
  const minusLogOfInverse = sum(logOfLast, logOfRatio(1, inverse * middle));
  middles.set([middle, 1 / middle, ...inParts(logOfLast)], 4 * i);
  inverses.set([inverse, ...inParts(minusLogOfInverse)], 3 * i);
}

/** ln a/b: short work, where they are near to each other. */
function logOfRatio(a: number, b: number): DoubleDouble {
  const half = inverseTangentSeries(quotient(exactSum(a, -b), exactSum(a, b)), 1);
  return { high: 2 * half.high, low: 2 * half.low };
}

/** To the last digit of LN2_HIGH, and the rest. */
function inParts(exact: DoubleDouble): readonly [high: number, low: number] {
  // Not −0, so that ln 1 is 0.
  const high = exact.high + TO_SAME_DIGIT - TO_SAME_DIGIT;
  return [high, exact.high - high + exact.low];
}

export function log(x: number): number {
  if (!(x >= LEAST_NORMAL && x < Infinity)) return unusualLogarithm(x);
  const offset = upperWord(x) - FIRST;
  const k = offset >> 20;
  const i = 4 * ((offset >> 13) & (PLACES - 1));
  const z = x * powersOfTwo[ZEROTH - k]!;
  const r = (z - middles[i]!) * middles[i + 1]!;
  const square = r * r;
  const rest = k * LN2_LOW + middles[i + 3]! + square * (r * bent(r) - 0.5);
  return k * LN2_HIGH + middles[i + 2]! + (r + rest);
}

/** (ln(1 + r) − r + r²/2)/r³ for small r. */
const bent = (r: number): number => {
  const square = r * r;
  const first = 1 / 3 - r * 0.25 + square * (0.2 - r * (1 / 6));
  return first + square * square * (1 / 7 - r * 0.125 + square * (1 / 9 - r * 0.1 + square * (1 / 11)));
};

function unusualLogarithm(x: number): number {
  if (x === 0) return -Infinity;
  if (!(x > 0)) return NaN;
  if (x === Infinity) return Infinity;
  return logInParts(x * LIFT, -LIFT_EXPONENT) + logLow[0]!;
}

/** ln(1 + x), also where x is small. Within 1.2 units in the last place. */
export function log1p(x: number): number {
  const near = 1 + x;
  if (near === 1 || near === Infinity) return x;
  if (!(near > 0)) return log(near);
  // The logarithm of the rounded sum, and what the rounding took.
  return log(near) + (x > 1 ? 1 - (near - x) : x - (near - 1)) / near;
}

/** 1/ln 10 and 1/ln 2: 24 digits, and the rest. */
const PER_LN10 = 0.434_294_492_006_301_9;
const PER_LN10_REST = -1.010_305_005_223_168_3e-8;
const PER_LN2 = 1.442_695_021_629_333_5;
const PER_LN2_REST = 1.925_962_991_126_617_5e-8;

/** Exact for whole powers of ten. */
export const log10 = (x: number): number => logTo(x, PER_LN10, PER_LN10_REST);

/** Exact for whole powers of two. */
export const log2 = (x: number): number => logTo(x, PER_LN2, PER_LN2_REST);

function logTo(x: number, perUnit: number, rest: number): number {
  if (!(x > 0 && x < Infinity)) return unusualLogarithm(x);
  const log = x < LEAST_NORMAL ? logInParts(x * LIFT, -LIFT_EXPONENT) : logInParts(x, 0);
  const upper = Math.fround(log);
  return upper * perUnit + ((log - upper + logLow[0]!) * perUnit + log * rest);
}

/** What the last call of `logInParts` left out of its answer. A cell, because a pair would have to be allocated. */
export const logLow = new Float64Array(1);

/** ln(x 2ⁿ) for a normal x: the double, with the rest, right to 2⁻⁶⁴ of it or so, in `logLow`. */
export function logInParts(x: number, n: number): number {
  const offset = upperWord(x) - FIRST;
  const own = offset >> 20;
  const i = 3 * ((offset >> 13) & (PLACES - 1));
  const z = x * powersOfTwo[ZEROTH - own]!;
  const k = own + n;
  const c = inverses[i]!;
  const upper = Math.fround(z);
  const r1 = upper * c - 1;
  const r2 = (z - upper) * c;
  const r = r1 + r2;
  // r²/2 without loss, from two halves of r.
  const rHigh = Math.fround(r);
  const halfSquare = 0.5 * rHigh * rHigh;
  const base = k * LN2_HIGH + inverses[i + 1]!;
  const first = base + r;
  const second = first - halfSquare;
  const rest =
    base -
    first +
    r +
    (r1 - r + r2) +
    (first - second - halfSquare) +
    (k * LN2_LOW + inverses[i + 2]!) -
    0.5 * (r - rHigh) * (r + rHigh) +
    r * r * r * bent(r);
  const high = second + rest;
  logLow[0] = second - high + rest;
  return high;
}
