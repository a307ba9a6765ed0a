/**
 * Elementary functions from nothing but + − × ÷ and the square root, which every machine rounds alike. Those that come with a
 * JavaScript engine may differ in the last bit from one release to the next. Right to some 1e-15, which is all that is asked
 * here; derived, no source.
 *
 * One function without anything from outside, so that a browser can be handed its text.
 */
export function useSameElementaryFunctions(math: Math): void {
  const { PI, LN2, abs, floor, round, sqrt } = math;

  const exp = (x: number): number => {
    if (!(abs(x) < 700)) return x < 0 ? 0 : x > 0 ? Infinity : x;
    const k = round(x / LN2);
    const r = (x - k * LN2) / 32;
    let [term, sum] = [1, 0];
    for (let i = 1; i < 12; i += 1) sum += term *= r / i;
    // (1 + s)² − 1 = s (2 + s), five times.
    for (let i = 0; i < 5; i += 1) sum *= 2 + sum;
    return (1 + sum) * power(2, k);
  };
  const log = (x: number): number => {
    if (!(x > 0) || x === Infinity) return x === 0 ? -Infinity : x > 0 ? Infinity : NaN;
    let [m, k] = [x, 0];
    for (; m > 1.5; m /= 2) k += 1;
    for (; m < 0.75; m *= 2) k -= 1;
    const t = (m - 1) / (m + 1);
    let [term, sum] = [t, 0];
    for (let i = 1; i < 46; i += 2) {
      sum += term / i;
      term *= t * t;
    }
    return 2 * sum + k * LN2;
  };
  const power = (x: number, n: number): number => {
    let [result, square] = [1, x];
    for (let left = abs(n); left > 0; left = floor(left / 2)) {
      if (left % 2 === 1) result *= square;
      square *= square;
    }
    return n < 0 ? 1 / result : result;
  };
  const pow = (x: number, y: number): number => {
    if (Number.isInteger(y) && abs(y) < 1024) return power(x, y);
    if (y === 0.5) return sqrt(x);
    return x === 0 ? (y > 0 ? 0 : Infinity) : exp(y * log(x));
  };
  const series = (x: number, first: number): number => {
    let [term, sum] = [first === 0 ? 1 : x, 0];
    for (let i = first; i < 30; i += 2) {
      sum += term;
      term *= -(x * x) / ((i + 1) * (i + 2));
    }
    return sum;
  };
  const turned = (x: number, quarters: number): number => {
    const k = round(x / (PI / 2));
    const rest = x - k * (PI / 2);
    const quadrant = (((k + quarters) % 4) + 4) % 4;
    const value = quadrant % 2 === 0 ? series(rest, 1) : series(rest, 0);
    return quadrant < 2 ? value : -value;
  };
  const sin = (x: number): number => turned(x, 0);
  const cos = (x: number): number => turned(x, 1);
  const atan = (x: number): number => {
    if (abs(x) > 1) return (x > 0 ? PI : -PI) / 2 - atan(1 / x);
    if (abs(x) > 0.2) return 2 * atan(x / (1 + sqrt(1 + x * x)));
    let [term, sum] = [x, 0];
    for (let i = 1; i < 30; i += 2) {
      sum += term / i;
      term *= -(x * x);
    }
    return sum;
  };
  const atan2 = (y: number, x: number): number => {
    if (x === 0) return y === 0 ? 0 : (y > 0 ? PI : -PI) / 2;
    const inner = atan(y / x);
    return x > 0 ? inner : y < 0 ? inner - PI : inner + PI;
  };
  const asin = (x: number): number => atan2(x, sqrt(1 - x * x));
  const sinh = (x: number): number => (exp(x) - exp(-x)) / 2;
  const cosh = (x: number): number => (exp(x) + exp(-x)) / 2;
  const cbrt = (x: number): number => (x < 0 ? -exp(log(-x) / 3) : x === 0 ? 0 : exp(log(x) / 3));
  const hypot = (...values: number[]): number => sqrt(values.reduce((sum, own) => sum + own * own, 0));
  Object.assign(math, { exp, log, pow, sin, cos, atan, atan2, asin, sinh, cosh, cbrt, hypot });
  Object.assign(math, {
    tan: (x: number) => sin(x) / cos(x),
    acos: (x: number) => PI / 2 - asin(x),
    tanh: (x: number) => (abs(x) > 20 ? (x > 0 ? 1 : -1) : sinh(x) / cosh(x)),
    acosh: (x: number) => log(x + sqrt(x * x - 1)),
    asinh: (x: number) => log(x + sqrt(x * x + 1)),
    atanh: (x: number) => log((1 + x) / (1 - x)) / 2,
    expm1: (x: number) => exp(x) - 1,
    log1p: (x: number) => log(1 + x),
    log2: (x: number) => log(x) / LN2,
    log10: (x: number) => log(x) / log(10),
  });
}
