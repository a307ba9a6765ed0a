/**
 * Broyden's method for a fixed point of a smooth map, P(x) = x: residual r = P(x) − x, and an approximation H of the
 * inverse of −∂r/∂x, kept up from step to step,
 *
 *   x ← x + H r,    H ← H + (Δx − HΔr′) Δxᵀ H / (Δxᵀ H Δr′),    Δr′ = −Δr
 *
 * that begins as the identity: the first step is the map itself. One call of the map per step. For unknowns of like size
 * whose map nearly contracts. Source: C. G. Broyden, Math. Comp. 19 (1965), first method, inverse form (from memory).
 */
export interface Broyden {
  /** The step to take from a point with that residual; valid until the next call. */
  step(residual: Float64Array): Float64Array;
  /** Learns what the last step did to the residual; the step may have been taken shorter. */
  learn(taken: Float64Array, residual: Float64Array): void;
}

export function broyden(size: number): Broyden {
  const inverse = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) inverse[i * size + i] = 1;
  const step = new Float64Array(size);
  const last = new Float64Array(size);
  const change = new Float64Array(size);
  const left = new Float64Array(size);

  const apply = (vector: Float64Array, out: Float64Array): void => {
    for (let i = 0; i < size; i += 1) {
      let sum = 0;
      for (let j = 0; j < size; j += 1) sum += inverse[i * size + j]! * vector[j]!;
      out[i] = sum;
    }
  };

  return {
    step(residual) {
      last.set(residual);
      apply(residual, step);
      return step;
    },
    learn(taken, residual) {
      for (let i = 0; i < size; i += 1) change[i] = last[i]! - residual[i]!;
      const seen = new Float64Array(size);
      apply(change, seen);
      let denominator = 0;
      left.fill(0);
      for (let i = 0; i < size; i += 1) {
        denominator += taken[i]! * seen[i]!;
        for (let j = 0; j < size; j += 1) left[j]! += taken[i]! * inverse[i * size + j]!;
      }
      let length = 0;
      for (let i = 0; i < size; i += 1) length += taken[i]! * taken[i]!;
      // A step that was not felt teaches nothing.
      if (Math.abs(denominator) < 1e-3 * length) return;
      for (let i = 0; i < size; i += 1) {
        const missing = (taken[i]! - seen[i]!) / denominator;
        for (let j = 0; j < size; j += 1) inverse[i * size + j]! += missing * left[j]!;
      }
    },
  };
}
