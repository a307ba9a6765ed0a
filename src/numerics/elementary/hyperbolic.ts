/**
 * Hyperbolic functions and their inverses, by the identities that lose nothing where x is small (any table, for example
 * Abramowitz & Stegun 4.5 and 4.6, from memory), alike to the last bit on every machine. Within 2 units in the last place.
 */
import { exp, expm1 } from './exponential.ts';
import { log, log1p } from './logarithm.ts';

const LN2 = Math.LN2;
/** Above it, 1 beside the square of a number is lost. */
const LARGE = 134_217_728;

export function sinh(x: number): number {
  const size = Math.abs(x);
  const value = size > 22 ? large(size) : ofGrowth(expm1(size));
  return x < 0 || Object.is(x, -0) ? -value : value;
}

const ofGrowth = (t: number): number => 0.5 * (t + t / (t + 1));

/** eˣ/2, which may be a double where eˣ is none. */
function large(x: number): number {
  const root = exp(0.5 * x);
  return 0.5 * root * root;
}

export function tanh(x: number): number {
  const size = Math.abs(x);
  if (size > 22) return x < 0 ? -1 : 1;
  const t = expm1(2 * size);
  const value = size < 0.5 ? t / (t + 2) : 1 - 2 / (t + 2);
  return x < 0 || Object.is(x, -0) ? -value : value;
}

export function acosh(x: number): number {
  if (!(x >= 1)) return NaN;
  if (x > LARGE) return log(x) + LN2;
  const t = x - 1;
  return log1p(t + Math.sqrt(2 * t + t * t));
}

export function atanh(x: number): number {
  const size = Math.abs(x);
  const twice = 2 * size;
  const value = 0.5 * log1p(size < 0.5 ? twice + (twice * size) / (1 - size) : twice / (1 - size));
  return x < 0 || Object.is(x, -0) ? -value : value;
}
