/**
 * The downhill simplex of Nelder and Mead within bounds: n + 1 points walk, stretch and shrink towards lower values
 * without derivatives. Points beyond a bound are put on it.
 *
 * J. A. Nelder and R. Mead, Computer Journal 7 (1965) 308; shrinking and stretching by the number of dimensions as of
 * F. Gao and L. Han, Comput. Optim. Appl. 51 (2012) 259.
 */
import type { Search } from './search.ts';

export interface SimplexTask {
  readonly start: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** First step along each axis. */
  readonly step: readonly number[];
  /** Ends when all points lie within this of each other, on every axis. */
  readonly tolerance: number;
  readonly mostPoints: number;
}

export interface Lowest {
  readonly at: readonly number[];
  readonly value: number;
  /** Whether the simplex has closed; if not, `mostPoints` were asked for. */
  readonly closed: boolean;
}

interface Vertex {
  readonly at: readonly number[];
  readonly value: number;
}

export function* nelderMead(task: SimplexTask): Search<readonly number[], Lowest> {
  const n = task.start.length;
  const inside = (at: readonly number[]): number[] =>
    at.map((x, i) => Math.min(Math.max(x, task.low[i]!), task.high[i]!));
  const [expand, contract, shrink] = [1 + 2 / n, 0.75 - 1 / (2 * n), Math.max(0.5, 1 - 1 / n)] as const;
  const simplex: Vertex[] = [];
  for (const at of corners(task)) simplex.push({ at, value: yield at });
  let asked = simplex.length;
  for (;;) {
    simplex.sort((a, b) => a.value - b.value);
    const [best, worst, second] = [simplex[0]!, simplex[n]!, simplex[n - 1]!];
    if (isClosed(simplex, task.tolerance)) return { ...best, closed: true };
    if (asked >= task.mostPoints) return { ...best, closed: false };
    const centre = best.at.map((_, i) => simplex.slice(0, n).reduce((sum, { at }) => sum + at[i]!, 0) / n);
    const along = (t: number): number[] => inside(centre.map((c, i) => c + t * (c - worst.at[i]!)));
    const reflected = along(1);
    const value = yield reflected;
    asked += 1;
    let taken: Vertex = { at: reflected, value };
    if (value < best.value) {
      const further = along(expand);
      const there = yield further;
      asked += 1;
      if (there < value) taken = { at: further, value: there };
    } else if (value >= second.value) {
      const nearer = along(value < worst.value ? contract : -contract);
      const there = yield nearer;
      asked += 1;
      if (there >= Math.min(value, worst.value)) {
        for (let k = 1; k <= n; k += 1) {
          const at = simplex[k]!.at.map((x, i) => best.at[i]! + shrink * (x - best.at[i]!));
          simplex[k] = { at, value: yield at };
          asked += 1;
        }
        continue;
      }
      taken = { at: nearer, value: there };
    }
    simplex[n] = taken;
  }
}

/** The start and a step from it along each axis, turned back where it would leave the bounds. */
function corners({ start, step, low, high }: SimplexTask): number[][] {
  const steps = step.map((own, i) => {
    const at = start[i]! + own;
    return at > high[i]! || at < low[i]! ? -own : own;
  });
  return [[...start], ...steps.map((own, k) => start.map((x, i) => (i === k ? x + own : x)))];
}

const isClosed = ([first, ...others]: readonly Vertex[], tolerance: number): boolean =>
  others.every(({ at }) => at.every((x, i) => Math.abs(x - first!.at[i]!) <= tolerance));
