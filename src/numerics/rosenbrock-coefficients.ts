/**
 * RODAS, a Rosenbrock method of order 4 with an embedded one of order 3: six stages, L-stable, stiffly accurate. In the
 * form that needs no product with the Jacobian J,
 *
 *   (I − hγJ) uᵢ = γ (h f(y₀ + Σ aᵢⱼ uⱼ) + Σ cᵢⱼ uⱼ)      y₁ = y₀ + Σ mᵢ uᵢ      error = u₆
 *   y(x₀ + θh) = y₀ + θ Σ (mᵢ + (1−θ)(pᵢ + θ qᵢ)) uᵢ     (order 3)
 *
 * Source: Hairer & Wanner, Solving Ordinary Differential Equations II, sections IV.7 and VI.4, figures as in their
 * program rodas.f; held to the conditions of order and stability in tests/published/rosenbrock-coefficients.test.ts.
 */

export const STAGES = 6;

/** γ. */
export const GAMMA = 0.25;

type Row = readonly number[];

const FIFTH: Row = [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895];

/** aᵢⱼ, one row per stage. */
export const STAGE_WEIGHTS: readonly Row[] = [
  [],
  [1.544],
  [0.9466785280815826, 0.2557011698983284],
  [3.314825187068521, 2.896124015972201, 0.9986419139977817],
  FIFTH,
  [...FIFTH, 1],
];

/** cᵢⱼ, one row per stage. */
export const STAGE_COUPLING: readonly Row[] = [
  [],
  [-5.6688],
  [-2.430093356833875, -0.2063599157091915],
  [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
  [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616],
  [8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054],
];

/** mᵢ. */
export const SOLUTION_WEIGHTS: Row = [...FIFTH, 1, 1];

/** What the solution has beyond the embedded one. */
export const ERROR_WEIGHTS: Row = [0, 0, 0, 0, 0, 1];

/** pᵢ and qᵢ. */
export const DENSE_SQUARE_WEIGHTS: Row = [
  10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823, 1.025137723295662, 0,
];
export const DENSE_CUBE_WEIGHTS: Row = [
  -0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386, -6.594389125716872, 0,
];

/**
 * From weights w of the stages uᵢ to weights b of the increments h (f + J uᵢ) they stand for: Σ wᵢ uᵢ = Σ bᵢ h (fᵢ + J uᵢ)
 * with (I/γ − C)ᵀ b = w.
 */
export function slopeWeights(weights: readonly number[]): Float64Array {
  const b = Float64Array.from(weights);
  for (let i = STAGES - 1; i >= 0; i -= 1) {
    for (let j = i + 1; j < STAGES; j += 1) b[i]! += STAGE_COUPLING[j]![i]! * b[j]!;
    b[i]! *= GAMMA;
  }
  return b;
}
