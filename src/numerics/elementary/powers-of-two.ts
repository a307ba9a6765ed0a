/** Exponents of doubles: taken off and put on by tables and by the bits themselves, without a rounding. */

/** Of the least number that has all its digits. */
export const LEAST_EXPONENT = -1022;
const LARGEST_EXPONENT = 1023;
/** 2⁻¹⁰²². Below are the numbers that have fewer digits the smaller they are. */
export const LEAST_NORMAL = 2.225_073_858_507_201_4e-308;
/** 2⁵⁴, which lifts those among the others. */
export const LIFT = 18_014_398_509_481_984;
export const LIFT_EXPONENT = 54;

/** The place of 2⁰ among the powers; before it lie all that a double can hold, down to 2⁻¹⁰⁷⁴. */
export const ZEROTH = 1074;

/** 2ⁿ at place n + ZEROTH. */
export const powersOfTwo = new Float64Array(ZEROTH + LARGEST_EXPONENT + 1);
powersOfTwo[ZEROTH] = 1;
for (let n = 1; n <= LARGEST_EXPONENT; n += 1) powersOfTwo[ZEROTH + n] = 2 * powersOfTwo[ZEROTH + n - 1]!;
for (let n = 1; n <= ZEROTH; n += 1) powersOfTwo[ZEROTH - n] = powersOfTwo[ZEROTH - n + 1]! / 2;

/** x 2ⁿ with one rounding at most, also where it runs out of digits or over the top: −1138 ≤ n ≤ 1087, x between 0.5 and 2. */
export function scaled(x: number, n: number): number {
  if (n > LARGEST_EXPONENT) return x * powersOfTwo[ZEROTH + n - 64]! * 18_446_744_073_709_551_616;
  if (n < LEAST_EXPONENT) return (x * powersOfTwo[ZEROTH + n + 64]!) / 18_446_744_073_709_551_616;
  return x * powersOfTwo[ZEROTH + n]!;
}

const value = new Float64Array(1);
const words = new Int32Array(value.buffer);
value[0] = 1;
/** Which of the two words holds sign and exponent depends on the machine. */
const UPPER = words[1] === 0 ? 0 : 1;

/** Sign, eleven bits of exponent and the first twenty of the digits. */
export function upperWord(x: number): number {
  value[0] = x;
  return words[UPPER]!;
}

/** Of x > 0: n for 2ⁿ ≤ x < 2ⁿ⁺¹, −1023 where digits run out. */
export const exponentOf = (x: number): number => (upperWord(x) >> 20) - 1023;
