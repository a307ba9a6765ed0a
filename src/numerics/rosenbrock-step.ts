/**
 * One step of the Rosenbrock method: tried from a start, asked about its error and about any place within it.
 *
 * Only the coupled components take part in the linear systems. One that merely adds up, with slope g(y), has a row in
 * the Jacobian but no column, so its stages need no solving, and a weighted sum of them is had in one go:
 *
 *   Σ wᵢ uᵢ = h (Σ bᵢ g(yᵢ) + g′(y₀) Σ bᵢ uᵢ),  b from w as in `slopeWeights`
 *
 * with the weights of the solution, of the error or of a place within the step. Sums that the slopes keep, such as mass
 * in less mass out, the components keep too, to the rounding of the difference quotients in g′.
 */
import { autonomousForm } from './autonomous-form.ts';
import { linearSolver } from './dense-linear-solver.ts';
import { differenceJacobian } from './difference-jacobian.ts';
import type { OdeProblem, Tolerances } from './integrator.ts';
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

const WEIGHTS = flat(STAGE_WEIGHTS);
const COUPLING = flat(STAGE_COUPLING);
const SOLUTION = flat([SOLUTION_WEIGHTS]);
const ERROR = flat([ERROR_WEIGHTS]);
const SOLUTION_SLOPE_WEIGHTS = slopeWeights(SOLUTION_WEIGHTS);
const ERROR_SLOPE_WEIGHTS = slopeWeights(ERROR_WEIGHTS);
const DENSE_SQUARE_SLOPE_WEIGHTS = slopeWeights(DENSE_SQUARE_WEIGHTS);
const DENSE_CUBE_SLOPE_WEIGHTS = slopeWeights(DENSE_CUBE_WEIGHTS);

/** The first step may change a component by about this share of its size. */
const FIRST_CHANGE = 0.01;

export interface RosenbrockStep {
  readonly derivativeCalls: number;
  /** The last component found without a finite slope, or −1 when all had one since the start. */
  readonly culprit: number;
  /** Takes slopes and Jacobian at a start, steps of about `length` ahead; false when a slope is not finite. */
  begin(x: number, y: Float64Array, length: number): boolean;
  /** A cautious length for a step of which nothing else is known. */
  firstLength(): number;
  /** Tries a step: its error as a share of the tolerance; NaN when it cannot be made. */
  attempt(length: number): number;
  /** Writes the state at the end of the last attempt. */
  end(y: Float64Array): void;
  /** One component at a share of the last attempt's length. */
  component(index: number, share: number): number;
}

/** The components that have a column, and the column of each component or −1. */
function columnsOf({ dimension, coupled }: OdeProblem): { columns: Int32Array; columnOf: Int32Array } {
  const columns = Int32Array.from(coupled ?? Array.from({ length: dimension }, (_, i) => i));
  const columnOf = new Int32Array(dimension).fill(-1);
  for (const [column, component] of columns.entries()) columnOf[component] = column;
  return { columns, columnOf };
}

export function rosenbrockStep(given: OdeProblem, { relative, absolute }: Tolerances): RosenbrockStep {
  const problem = given.autonomous ? given : autonomousForm(given);
  const n = problem.dimension;
  const { columns, columnOf } = columnsOf(problem);
  const width = columns.length;
  const steering = Int32Array.from([...absolute.keys()].filter((i) => absolute[i]! < Infinity));
  const sizes = new Float64Array(n);
  for (const i of steering) sizes[i] = absolute[i]! / relative;
  const start = new Float64Array(n);
  const trial = new Float64Array(n);
  const scratch = new Float64Array(n);
  const jacobian = new Float64Array(n * width);
  const slopes = Array.from({ length: STAGES }, () => new Float64Array(n));
  /** uᵢ, stage after stage. */
  const stages = new Float64Array(STAGES * width);
  const stage = new Float64Array(width);
  const solver = linearSolver(width);
  /** Weights of the place last asked about, and Σ bᵢ uᵢ for the weights last used on a component that adds up. */
  const placeWeights = new Float64Array(STAGES);
  const placeSlopeWeights = new Float64Array(STAGES);
  const summed = new Float64Array(width);
  let place = NaN;
  let h = 0;
  let derivativeCalls = 0;
  let culprit = -1;

  const evaluate = (state: Float64Array, out: Float64Array): number => {
    derivativeCalls += 1;
    problem.derivative(0, state, out);
    for (let i = 0; i < n; i += 1) if (!Number.isFinite(out[i]!)) return (culprit = i);
    return -1;
  };
  const differences = { evaluate, columns, sizes, scratch };

  const begin = (x: number, y: Float64Array, length: number): boolean => {
    start.set(y);
    if (n > y.length) {
      start[n - 1] = x;
      sizes[n - 1] = length;
    }
    trial.set(start);
    culprit = -1;
    if (evaluate(trial, slopes[0]!) >= 0) return false;
    if (!problem.jacobian) return differenceJacobian(differences, trial, slopes[0]!, jacobian) < 0;
    derivativeCalls += problem.jacobian(trial, slopes[0]!, jacobian);
    return true;
  };

  const firstLength = (): number => {
    let quickest = 0;
    for (const i of steering) {
      const size = sizes[i]! + Math.abs(start[i]!);
      quickest = Math.max(quickest, Math.abs(slopes[0]![i]!) / size);
    }
    return FIRST_CHANGE / quickest;
  };

  const fillMatrix = (): void => {
    for (let r = 0; r < width; r += 1) {
      const row = columns[r]! * width;
      for (let k = 0; k < width; k += 1)
        solver.matrix[r * width + k] = (r === k ? 1 : 0) - GAMMA * h * jacobian[row + k]!;
    }
  };

  /** Σ wᵢ uᵢ of one column over the first `count` stages, the weights from `offset` on. */
  const sumOfStages = (weights: Float64Array, offset: number, column: number, count: number): number => {
    let sum = 0;
    for (let s = 0, i = column; s < count; s += 1, i += width) sum += weights[offset + s]! * stages[i]!;
    return sum;
  };

  /** Only the coupled components move: no slope depends on the others. */
  const moveTrial = (weights: Float64Array, offset: number, count: number): void => {
    for (let k = 0; k < width; k += 1) {
      const i = columns[k]!;
      trial[i] = start[i]! + sumOfStages(weights, offset, k, count);
    }
  };

  const solveStage = (s: number): void => {
    const slope = slopes[s]!;
    for (let k = 0; k < width; k += 1)
      stage[k] = GAMMA * (h * slope[columns[k]!]! + sumOfStages(COUPLING, s * STAGES, k, s));
    solver.solve(stage);
    stages.set(stage, s * width);
  };

  const attempt = (length: number): number => {
    h = length;
    place = NaN;
    fillMatrix();
    if (!solver.factorise()) return NaN;
    solveStage(0);
    for (let s = 1; s < STAGES; s += 1) {
      moveTrial(WEIGHTS, s * STAGES, s);
      if (evaluate(trial, slopes[s]!) >= 0) return NaN;
      solveStage(s);
    }
    return errorShare();
  };

  const sumForTotals = (weights: Float64Array): void => {
    for (let k = 0; k < width; k += 1) summed[k] = sumOfStages(weights, 0, k, STAGES);
  };

  /** What a component that adds up gains, after `sumForTotals` of the same weights. */
  const gain = (i: number, weights: Float64Array): number => {
    let sum = 0;
    for (let s = 0; s < STAGES; s += 1) sum += weights[s]! * slopes[s]![i]!;
    for (let k = 0; k < width; k += 1) sum += jacobian[i * width + k]! * summed[k]!;
    return h * sum;
  };

  /** Root of the mean square over the components with a tolerance. */
  const errorShare = (): number => {
    let sum = 0;
    sumForTotals(ERROR_SLOPE_WEIGHTS);
    moveTrial(SOLUTION, 0, STAGES);
    for (const i of steering) {
      const k = columnOf[i]!;
      const error = k < 0 ? gain(i, ERROR_SLOPE_WEIGHTS) : sumOfStages(ERROR, 0, k, STAGES);
      const size = Math.max(Math.abs(start[i]!), Math.abs(trial[i]!));
      sum += (error / (absolute[i]! + relative * size)) ** 2;
    }
    return Math.sqrt(sum / Math.max(1, steering.length));
  };

  const goTo = (share: number): void => {
    if (share === place) return;
    place = share;
    const rest = 1 - share;
    for (let s = 0; s < STAGES; s += 1) {
      placeWeights[s] =
        share * (SOLUTION[s]! + rest * (DENSE_SQUARE_WEIGHTS[s]! + share * DENSE_CUBE_WEIGHTS[s]!));
      placeSlopeWeights[s] =
        share *
        (SOLUTION_SLOPE_WEIGHTS[s]! +
          rest * (DENSE_SQUARE_SLOPE_WEIGHTS[s]! + share * DENSE_CUBE_SLOPE_WEIGHTS[s]!));
    }
    sumForTotals(placeSlopeWeights);
  };

  const component = (i: number, share: number): number => {
    goTo(share);
    const k = columnOf[i]!;
    return start[i]! + (k < 0 ? gain(i, placeSlopeWeights) : sumOfStages(placeWeights, 0, k, STAGES));
  };

  return {
    get derivativeCalls() {
      return derivativeCalls;
    },
    get culprit() {
      return culprit;
    },
    begin,
    firstLength,
    attempt,
    end: (y) => {
      for (let i = 0; i < y.length; i += 1) y[i] = component(i, 1);
    },
    component,
  };
}
