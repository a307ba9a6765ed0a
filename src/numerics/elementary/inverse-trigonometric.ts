/**
 * Inverse sine, cosine and tangent, alike to the last bit on every machine.
 *
 *   arctan u = arctan a + arctan t,   t = (u − a)/(1 + u a),   a = i/16 nearest to u,   |t| ≤ 1/32
 *
 * with the shorter side over the longer as u, a table of arctan a for each eighth of the circle, and the Taylor polynomial of t
 * without t¹⁵/15.
 *
 *   arcsin u = u + u³ p(u²)                     up to 1/2,
 *   arcsin u = π/2 − 2 arcsin √((1 − u)/2)      beyond
 *
 * with a polynomial p right to 2⁻⁵⁷ of u, interpolating at Chebyshev's points. All within 1 unit in the last place, 1.1 for the
 * angle of a point. The identities are in any table, for example Abramowitz & Stegun 4.4 (from memory).
 */
import { inverseTangentSeries, quotient, sum, type DoubleDouble } from './double-double.ts';
import { exponentOf, LEAST_EXPONENT, powersOfTwo, ZEROTH } from './powers-of-two.ts';

const HALF_PI = Math.PI / 2;
/** What the doubles nearest to π/2 and π leave out. */
const HALF_PI_REST = 6.123_233_995_736_766e-17;
const PI_REST = 1.224_646_799_147_353_2e-16;

/** Beside 1.5 × 2⁵² there are no fractions: adding and taking it away rounds to a whole number. */
const TO_WHOLE = 6_755_399_441_055_744;
/** Sides beyond are brought near to 1 first. */
const LARGE = 1e30;
const SMALL = 1e-30;

const PLACES = 16;
const PER_EIGHTH = 2 * (PLACES + 1);
/**
 * arctan a, π/2 − arctan a, π/2 + arctan a and π − arctan a, of i = 0 … 16 each: the double, then what it leaves out. Eighths
 * are counted from the right upwards to the left; in every other one the angle falls with a.
 */
const angles = new Float64Array(4 * PER_EIGHTH);
const axes: readonly DoubleDouble[] = [
  { high: 0, low: 0 },
  { high: HALF_PI, low: HALF_PI_REST },
  { high: HALF_PI, low: HALF_PI_REST },
  { high: Math.PI, low: PI_REST },
];
for (let i = 0, arc: DoubleDouble = axes[0]!; i <= PLACES; i += 1) {
  axes.forEach((axis, eighth) => {
    const { high, low } = sum(axis, eighth % 2 === 0 ? arc : { high: -arc.high, low: -arc.low });
    angles[eighth * PER_EIGHTH + 2 * i] = high;
    angles[eighth * PER_EIGHTH + 2 * i + 1] = low;
  });
  // From arctan i/16 to arctan (i + 1)/16.
  const step = quotient({ high: 16, low: 0 }, { high: 256 + i * (i + 1), low: 0 });
  arc = sum(arc, inverseTangentSeries(step, -1));
}

export function atan(x: number): number {
  const size = Math.abs(x);
  const value = size > 1 ? angleOf(1, size, 1) : angleOf(size, 1, 0);
  return x < 0 ? -value : x === 0 ? x : value;
}

/** The angle of the point (x, y), as `Math.atan2` has it. */
export function atan2(y: number, x: number): number {
  const height = Math.abs(y);
  const width = Math.abs(x);
  const leftwards = x < 0 || Object.is(x, -0);
  const size =
    height > width ? angleOf(width, height, leftwards ? 2 : 1) : angleOf(height, width, leftwards ? 3 : 0);
  return y < 0 || Object.is(y, -0) ? -size : size;
}

/** Of the point with these sides in that eighth of the circle. */
function angleOf(shorter: number, longer: number, eighth: number): number {
  const equal = shorter === longer;
  // The origin counts as lying on the axis, and two infinite sides as equal.
  const ratio = equal ? (longer === 0 ? 0 : 1) : shorter / longer;
  const i = ratio * PLACES + TO_WHOLE - TO_WHOLE;
  if (!(i > 0)) return besideTabulated(eighth, 0, ratio);
  if (equal) return besideTabulated(eighth, PLACES, 0);
  const unit = longer > LARGE || longer < SMALL ? unitFor(longer) : 1;
  const side = shorter * unit;
  const base = longer * unit;
  const a = i / PLACES;
  // The upper digits of the longer side times a are exact, and so are the others.
  const upper = Math.fround(base);
  return besideTabulated(eighth, i, (side - upper * a - (base - upper) * a) / (base + side * a));
}

/** Brings a side near to 1. */
const unitFor = (side: number): number => powersOfTwo[ZEROTH - Math.max(LEAST_EXPONENT, exponentOf(side))]!;

function besideTabulated(eighth: number, i: number, t: number): number {
  const z = t * t;
  const bent = t * z * (-1 / 3 + z * (0.2 + z * (-1 / 7 + z * (1 / 9 + z * (-1 / 11 + z * (1 / 13))))));
  const place = eighth * PER_EIGHTH + 2 * i;
  const rest = angles[place + 1]!;
  return (eighth & 1) === 0 ? angles[place]! + (t + (bent + rest)) : angles[place]! - (t + (bent - rest));
}

export function asin(x: number): number {
  const size = Math.abs(x);
  if (!(size > 0.5)) return x + x * bentSine(x * x);
  if (!(size <= 1)) return NaN;
  const square = 0.5 * (1 - size);
  const root = Math.sqrt(square);
  const upper = Math.fround(root);
  const rest = root - upper + lostByRoot(square, root) + root * bentSine(square);
  const value = HALF_PI - 2 * upper - (2 * rest - HALF_PI_REST);
  return x < 0 ? -value : value;
}

export function acos(x: number): number {
  const size = Math.abs(x);
  if (!(size > 0.5)) return HALF_PI - (x - (HALF_PI_REST - x * bentSine(x * x)));
  if (!(size <= 1)) return NaN;
  const square = 0.5 * (1 - size);
  const root = Math.sqrt(square);
  const rest = lostByRoot(square, root) + root * bentSine(square);
  return x > 0 ? 2 * (root + rest) : Math.PI - 2 * root - (2 * rest - PI_REST);
}

/** What a square root lost to rounding. */
function lostByRoot(square: number, root: number): number {
  if (root === 0) return 0;
  // The square of the upper digits is exact.
  const upper = Math.fround(root);
  return (square - upper * upper - (root - upper) * (root + upper)) / (2 * root);
}

/** (arcsin u − u)/u of z = u² ≤ 1/4. */
function bentSine(z: number): number {
  const w = z * z;
  const v = w * w;
  const first = 0.166_666_666_666_666_69 + z * 0.074_999_999_999_984_33;
  const second = 0.044_642_857_146_355_43 + z * 0.030_381_944_138_531_247;
  const third = 0.022_372_172_942_149_92 + z * 0.017_352_392_720_869_973;
  const fourth = 0.013_971_212_973_552_933 + z * 0.011_479_177_415_184_906;
  const fifth = 0.010_322_814_350_185_78 + z * 0.005_457_506_718_640_358;
  const sixth = 0.017_400_879_442_694_02 + z * -0.014_851_887_071_247_204;
  const last = fifth + w * sixth + v * 0.028_757_851_367_421_566;
  return z * (first + w * second + v * (third + w * fourth) + v * v * last);
}
