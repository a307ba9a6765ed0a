/**
 * Brent's method for a root between two points of different sign: inverse quadratic interpolation or the secant where
 * they behave, bisection where they do not. A function that jumps through zero is as welcome: its jump is found.
 *
 * R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, chapter 4.
 */
import type { Search } from './search.ts';

export interface Bracket {
  readonly a: number;
  readonly b: number;
  readonly valueAtA: number;
  readonly valueAtB: number;
}

/** Ends of the last bracket: the function has different signs there, or is zero at `near`. */
export interface Root {
  readonly near: number;
  readonly far: number;
}

export function* root(bracket: Bracket, tolerance: number): Search<number, Root> {
  let { a, b, valueAtA: fa, valueAtB: fb } = bracket;
  let [c, fc] = [a, fa];
  let step = b - a;
  let before = step;
  for (;;) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      step = before = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return { near: b, far: fb === 0 ? b : c };
    const jump =
      Math.abs(before) >= least && Math.abs(fa) > Math.abs(fb) ? interpolated(a, b, c, fa, fb, fc) : NaN;
    if (
      Math.abs(jump) < Math.min(1.5 * Math.abs(half) - least / 2, Math.abs(before) / 2) &&
      jump > 0 === half > 0
    ) {
      before = step;
      step = jump;
    } else step = before = half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = yield b;
  }
}

/** Distance from b to the root of the parabola in y through three points, or of the line through two. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  return (s * ((c - b) * q * (q - r) - (b - a) * (r - 1))) / -((q - 1) * (r - 1) * (s - 1));
}
