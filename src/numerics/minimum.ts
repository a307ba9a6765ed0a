/**
 * Brent's method for the minimum of a function of one variable between two bounds: a parabola through the three best
 * points where it helps, the golden section where it does not.
 *
 * R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, chapter 5.
 */
import type { Search } from './search.ts';

export interface Minimum {
  readonly at: number;
  readonly value: number;
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

export function* minimumBetween(low: number, high: number, tolerance: number): Search<number, Minimum> {
  let [a, b] = [low, high];
  let x = a + GOLDEN * (b - a);
  let fx = yield x;
  let [w, fw, v, fv] = [x, fx, x, fx];
  let step = 0;
  let before = 0;
  for (;;) {
    const middle = (a + b) / 2;
    const least = Math.sqrt(Number.EPSILON) * Math.abs(x) + tolerance / 3;
    if (Math.abs(x - middle) <= 2 * least - (b - a) / 2) return { at: x, value: fx };
    const jump = Math.abs(before) > least ? parabola(x, w, v, fx, fw, fv) : NaN;
    if (Math.abs(jump) < Math.abs(before) / 2 && x + jump > a && x + jump < b) {
      before = step;
      step = x + jump - a < 2 * least || b - (x + jump) < 2 * least ? Math.sign(middle - x) * least : jump;
    } else {
      before = x < middle ? b - x : a - x;
      step = GOLDEN * before;
    }
    const u = x + (Math.abs(step) >= least ? step : Math.sign(step || 1) * least);
    const fu = yield u;
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, u, fu];
      continue;
    }
    if (u < x) a = u;
    else b = u;
    if (fu <= fw || w === x) [v, fv, w, fw] = [w, fw, u, fu];
    else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
  }
}

/** Distance from x to the vertex of the parabola through three points. */
function parabola(x: number, w: number, v: number, fx: number, fw: number, fv: number): number {
  const r = (x - w) * (fx - fv);
  const q = (x - v) * (fx - fw);
  return ((x - v) * q - (x - w) * r) / (2 * (r - q));
}
