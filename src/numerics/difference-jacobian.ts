/**
 * The Jacobian of a derivative by forward differences, one column and one call for each component that matters.
 *
 * Each component is moved the way it is going, so that a derivative with a kink right behind the start is seen from the
 * side that lies ahead.
 */
import { pow } from './elementary/power.ts';

/** Share of its size by which a component is moved: the square root of the rounding of a number. */
const SHARE = pow(2, -26);

/** Writes the slopes of a state; the first component without a finite slope, or −1. */
export type Evaluation = (state: Float64Array, slopes: Float64Array) => number;

export interface Differences {
  readonly evaluate: Evaluation;
  /** The components to move, one per column. */
  readonly columns: Int32Array;
  /** Least size of each component, in its own unit. */
  readonly sizes: Float64Array;
  /** As long as the state; overwritten. */
  readonly scratch: Float64Array;
}

/**
 * Writes ∂slope/∂component row by row. `state` is as it was when the function returns: the first component without a
 * finite slope, or −1.
 */
export function differenceJacobian(
  { evaluate, columns, sizes, scratch }: Differences,
  state: Float64Array,
  slopes: Float64Array,
  jacobian: Float64Array,
): number {
  const width = columns.length;
  for (let k = 0; k < width; k += 1) {
    const component = columns[k]!;
    const here = state[component]!;
    const size = Math.max(Math.abs(here), sizes[component]!) || 1;
    state[component] = here + (slopes[component]! < 0 ? -SHARE : SHARE) * size;
    const moved = state[component] - here;
    const culprit = evaluate(state, scratch);
    state[component] = here;
    if (culprit >= 0) return culprit;
    for (let i = 0; i < slopes.length; i += 1) {
      jacobian[i * width + k] = (scratch[i]! - slopes[i]!) / moved;
    }
  }
  return -1;
}
