/**
 * x^y, alike to the last bit on every machine: e^(y ln x) with logarithm and product in two parts, since the exponential makes
 * as many digits of its argument's worthless as that has before its point. Within 0.53 units in the last place, hence exact
 * where x^y is a double.
 */
import { expOfSum } from './exponential.ts';
import { logInParts, logLow } from './logarithm.ts';
import { LEAST_NORMAL, LIFT, LIFT_EXPONENT } from './powers-of-two.ts';

/** Beyond, any x but 1 leaves the range of doubles. */
const LARGEST_EXPONENT = 1e20;

export function pow(x: number, y: number): number {
  // Much the most frequent, and a product is exact to half a unit.
  if (y === 2) return x * x;
  if (!(x >= LEAST_NORMAL && x < Infinity && Math.abs(y) < LARGEST_EXPONENT)) return unusualPower(x, y);
  return plainPower(x, y, 0);
}

/** (x 2ⁿ)^y for a normal x. */
function plainPower(x: number, y: number, n: number): number {
  const log = logInParts(x, n);
  const logHigh = Math.fround(log);
  const logRest = log - logHigh;
  const yHigh = Math.fround(y);
  const yRest = y - yHigh;
  const high = y * log;
  return expOfSum(
    high,
    yHigh * logHigh - high + yHigh * logRest + yRest * logHigh + yRest * logRest + y * logLow[0]!,
  );
}

/** As `Math.pow` has it: ECMA-262, Number::exponentiate. */
function unusualPower(x: number, y: number): number {
  if (y === 0) return 1;
  if (Number.isNaN(x) || Number.isNaN(y)) return NaN;
  const size = Math.abs(x);
  if (Math.abs(y) === Infinity && size === 1) return NaN;
  const negative = (x < 0 || Object.is(x, -0)) && Math.abs(y % 2) === 1;
  if (x < 0 && size < Infinity && Math.abs(y) < Infinity && Math.floor(y) !== y) return NaN;
  const value = powerOfSize(size, y);
  return negative ? -value : value;
}

function powerOfSize(size: number, y: number): number {
  if (size === 1) return 1;
  if (size === 0 || size === Infinity || Math.abs(y) >= LARGEST_EXPONENT)
    return size > 1 === y > 0 ? Infinity : 0;
  return size < LEAST_NORMAL ? plainPower(size * LIFT, y, -LIFT_EXPONENT) : plainPower(size, y, 0);
}
