/** The coefficients of the Rosenbrock method as its steps use them: in flat rows, for slopes, and along the clock. */
import {
  DENSE_CUBE_WEIGHTS,
  DENSE_SQUARE_WEIGHTS,
  ERROR_WEIGHTS,
  GAMMA,
  slopeWeights,
  SOLUTION_WEIGHTS,
  STAGE_COUPLING,
  STAGE_WEIGHTS,
  STAGES,
} from './rosenbrock-coefficients.ts';

/** Rows of weights one behind the other, each as long as there are stages. */
const flat = (rows: readonly (readonly number[])[]): Float64Array =>
  Float64Array.from(rows.flatMap((row) => Array.from({ length: STAGES }, (_, i) => row[i] ?? 0)));

export const WEIGHTS = flat(STAGE_WEIGHTS);
export const COUPLING = flat(STAGE_COUPLING);
export const SOLUTION = flat([SOLUTION_WEIGHTS]);
export const SOLUTION_SLOPE_WEIGHTS = slopeWeights(SOLUTION_WEIGHTS);
export const ERROR_SLOPE_WEIGHTS = slopeWeights(ERROR_WEIGHTS);
export const DENSE_SQUARE_SLOPE_WEIGHTS = slopeWeights(DENSE_SQUARE_WEIGHTS);
export const DENSE_CUBE_SLOPE_WEIGHTS = slopeWeights(DENSE_CUBE_WEIGHTS);

/** The figures of the method are known to some fourteen. */
const DIGITS = 1e12;

/** Each row sum of products with the numbers of the stages before. */
const weighted = (rows: Float64Array, row: number, numbers: Float64Array): number => {
  let sum = 0;
  for (let j = 0; j < row; j += 1) sum += rows[row * STAGES + j]! * numbers[j]!;
  return sum;
};

/** tᵢ: u of a component of slope 1, per h; and how far along the step each stage lies. */
export const CLOCK = new Float64Array(STAGES);
for (let s = 0; s < STAGES; s += 1) CLOCK[s] = GAMMA * (1 + weighted(COUPLING, s, CLOCK));
/** Rid of rounding: the last stages lie at the end of the step itself, where the next one begins. */
export const PLACES = Float64Array.from(
  CLOCK,
  (_, s) => Math.round(weighted(WEIGHTS, s, CLOCK) * DIGITS) / DIGITS,
);
