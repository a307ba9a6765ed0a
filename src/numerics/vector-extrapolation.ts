/**
 * The limit of a sequence of vectors that approaches a fixed point like a sum of few geometric series.
 *
 * Reduced rank extrapolation: of all weighted means of the states with weights that add up to one, the one whose change
 * over the next step is least. Exact when the approach consists of as many series as there are differences less one.
 * Source: Mesina 1977, Eddy 1979; review by Smith, Ford and Sidi, SIAM Review 29 (1987), from memory.
 */

/**
 * Extrapolates from successive states (oldest first, at least three). `scale` makes components comparable. Returns the
 * limit, or undefined when the differences do not tell it.
 */
export function extrapolatedLimit(
  states: readonly Float64Array[],
  scale: Float64Array,
): Float64Array | undefined {
  const steps = states.length - 1;
  const changes = Array.from({ length: steps }, (_, j) =>
    states[j + 1]!.map((value, i) => (value - states[j]![i]!) / scale[i]!),
  );
  const weights = leastChangeWeights(changes);
  if (weights === undefined) return undefined;
  const limit = new Float64Array(scale.length);
  for (const [j, weight] of weights.entries()) {
    for (let i = 0; i < limit.length; i += 1) limit[i]! += weight * states[j]![i]!;
  }
  return limit.every((value) => Number.isFinite(value)) ? limit : undefined;
}

/** Weights γ with Σγ = 1 that make |Σ γ_j Δ_j| least: normal equations ΔᵀΔ c = 1, γ = c/Σc. */
function leastChangeWeights(changes: readonly Float64Array[]): number[] | undefined {
  const n = changes.length;
  const matrix = changes.map((a) => changes.map((b) => dot(a, b)));
  const trace = matrix.reduce((sum, row, i) => sum + row[i]!, 0);
  if (trace === 0) return undefined;
  // A touch on the diagonal keeps nearly parallel differences from dividing by rounding errors.
  for (let i = 0; i < n; i += 1) matrix[i]![i]! += 1e-14 * trace;
  const solution = solved(matrix, new Array<number>(n).fill(1));
  const sum = solution.reduce((a, b) => a + b, 0);
  if (!Number.isFinite(sum) || sum === 0) return undefined;
  return solution.map((value) => value / sum);
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

/** Gaussian elimination with partial pivoting; the matrices here are three by three. */
function solved(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  for (let k = 0; k < n; k += 1) {
    let pivot = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(matrix[i]![k]!) > Math.abs(matrix[pivot]![k]!)) pivot = i;
    [matrix[k], matrix[pivot]] = [matrix[pivot]!, matrix[k]!];
    [right[k], right[pivot]] = [right[pivot]!, right[k]!];
    for (let i = k + 1; i < n; i += 1) {
      const factor = matrix[i]![k]! / matrix[k]![k]!;
      for (let j = k; j < n; j += 1) matrix[i]![j]! -= factor * matrix[k]![j]!;
      right[i]! -= factor * right[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k -= 1) {
    let sum = right[k]!;
    for (let j = k + 1; j < n; j += 1) sum -= matrix[k]![j]! * right[j]!;
    right[k] = sum / matrix[k]![k]!;
  }
  return right;
}
