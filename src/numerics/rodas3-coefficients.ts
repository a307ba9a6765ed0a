/**
 * RODAS3, a Rosenbrock method of order 3 with an embedded one of order 2: four stages, of which the second looks where the
 * first does, so that a step asks for slopes three times; L-stable, stiffly accurate. For loose tolerances, at which a step
 * that costs little is worth more than one that goes far. In the form of rosenbrock-coefficients.ts.
 *
 *   y(x₀ + θh) = y₀ + θ Σ (mᵢ + (1−θ) pᵢ) uᵢ     (order 2)
 *
 * Source: Sandu, Verwer, Blom, Spee, Carmichael & Potra, Benchmarking stiff ODE solvers for atmospheric chemistry problems II:
 * Rosenbrock solvers, Atmospheric Environment 31 (1997) 3459; the paper was not seen, the figures are those of several public
 * programs, all alike, and held to the conditions of order and stability in tests/published/rodas3-coefficients.test.ts. The pᵢ are derived here: of the first two stages, the only ones
 * that meet the conditions of order 2 at every place.
 */

/** γ. */
export const GAMMA = 1 / 2;

type Row = readonly number[];

/** aᵢⱼ, one row per stage. */
export const STAGE_WEIGHTS: readonly Row[] = [[], [0], [2, 0], [2, 0, 1]];

/** cᵢⱼ, one row per stage. */
export const STAGE_COUPLING: readonly Row[] = [[], [4], [1, -1], [1, -1, -8 / 3]];

/** mᵢ. */
export const SOLUTION_WEIGHTS: Row = [2, 0, 1, 1];

/** What the solution has beyond the embedded one. */
export const ERROR_WEIGHTS: Row = [0, 0, 0, 1];

/** pᵢ. */
export const DENSE_SQUARE_WEIGHTS: Row = [3, -1, 0, 0];
