/**
 * Numbers of twice the usual precision: the unevaluated sum of a double and of what it leaves out, some 1e-32 of the value.
 *
 * Only for tables and constants, once when a module is loaded: it makes an object of every result. Sums and products without
 * loss are those of T. J. Dekker, “A floating-point technique for extending the available precision”, Numerische Mathematik
 * 18 (1971), and D. E. Knuth, The Art of Computer Programming, vol. 2, 4.2.2 (from memory).
 */
export interface DoubleDouble {
  readonly high: number;
  readonly low: number;
}

/** 2²⁷ + 1 cuts a double into two halves of 26 bits. */
const HALVES = 134_217_729;

/** Of two doubles, without loss. */
export function exactSum(a: number, b: number): DoubleDouble {
  const high = a + b;
  const ofB = high - a;
  return { high, low: a - (high - ofB) + (b - ofB) };
}

function exactProduct(a: number, b: number): DoubleDouble {
  const high = a * b;
  const [a1, b1] = [upperHalf(a), upperHalf(b)];
  const [a2, b2] = [a - a1, b - b1];
  return { high, low: a1 * b1 - high + a1 * b2 + a2 * b1 + a2 * b2 };
}

function upperHalf(x: number): number {
  const stretched = HALVES * x;
  return stretched - (stretched - x);
}

export function sum(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const { high, low } = exactSum(a.high, b.high);
  return exactSum(high, low + (a.low + b.low));
}

export function product(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const { high, low } = exactProduct(a.high, b.high);
  return exactSum(high, low + (a.high * b.low + a.low * b.high));
}

export function quotient(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const high = a.high / b.high;
  const first = product({ high, low: 0 }, b);
  const rest = a.high - first.high - first.low + a.low;
  return exactSum(high, rest / b.high);
}

export function squareRoot(a: DoubleDouble): DoubleDouble {
  const high = Math.sqrt(a.high);
  const first = exactProduct(high, high);
  return exactSum(high, (a.high - first.high - first.low + a.low) / (2 * high));
}

/** t + s t³/3 + t⁵/5 + s t⁷/7 + …: the inverse tangent for s = −1, the inverse hyperbolic tangent for s = 1. |t| < 0.25. */
export function inverseTangentSeries(t: DoubleDouble, s: 1 | -1): DoubleDouble {
  const square = product(t, t);
  const factor = { high: s * square.high, low: s * square.low };
  let [power, total] = [t, t];
  for (let n = 3; Math.abs(power.high) > 1e-33; n += 2) {
    power = product(power, factor);
    total = sum(total, quotient(power, { high: n, low: 0 }));
  }
  return total;
}
