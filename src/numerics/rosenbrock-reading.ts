/**
 * What the last attempt at a Rosenbrock step has come to: any component at its end or at a place within, from the stages
 * and slopes that the step has left behind.
 *
 * A component that merely adds up, with slope g(x, y), has a row in the Jacobian but no column, so its stages need no
 * solving, and a weighted sum of them is had in one go:
 *
 *   Σ wᵢ uᵢ = h (Σ bᵢ g(xᵢ, yᵢ) + g_y Σ bᵢ uᵢ + h g_x Σ bᵢ tᵢ),  b from w as in `slopeWeights`
 *
 * with the weights of the solution, of the error or of a place within the step. Sums that the slopes keep, such as mass
 * in less mass out, the components keep too, to the rounding of the difference quotients in g_y.
 */
import { DENSE_CUBE_WEIGHTS, DENSE_SQUARE_WEIGHTS, STAGES } from './rosenbrock-coefficients.ts';
import {
  CLOCK,
  DENSE_CUBE_SLOPE_WEIGHTS,
  DENSE_SQUARE_SLOPE_WEIGHTS,
  SOLUTION,
  SOLUTION_SLOPE_WEIGHTS,
} from './rosenbrock-tables.ts';

/** The arrays of a step, which goes on writing to them. */
export interface StepTables {
  readonly start: Float64Array;
  /** Behind an attempt, its end: of the components with a column. */
  readonly trial: Float64Array;
  /** The components that have a column, and the column of each component or −1. */
  readonly columns: Int32Array;
  readonly columnOf: Int32Array;
  /** uᵢ, stage after stage. */
  readonly stages: Float64Array;
  /** Of all components, stage after stage. */
  readonly slopes: Float64Array;
  /** ∂slope/∂component, row by row, and ∂slope/∂x. */
  readonly jacobian: Float64Array;
  readonly drift: Float64Array;
}

/** A class, so that code compiled for one problem serves for the next. */
export class RosenbrockReading {
  private readonly tables: StepTables;
  private readonly adding: Int32Array;
  /** Weights of the place last asked about; the sums of the components that add up are taken when one is asked for. */
  private readonly weights = new Float64Array(STAGES);
  private readonly slopeWeights = new Float64Array(STAGES);
  private readonly summed: Float64Array;
  private summedClock = 0;
  private isSummed = false;
  private place = NaN;
  private h = 0;

  constructor(tables: StepTables) {
    const { columns, columnOf } = tables;
    this.tables = tables;
    this.adding = Int32Array.from([...columnOf.keys()].filter((i) => columnOf[i]! < 0));
    this.summed = new Float64Array(columns.length);
  }

  /** A step of another length is under way. */
  startAgain(length: number): void {
    this.h = length;
    this.place = NaN;
  }

  /** Writes the state at the end. */
  end(y: Float64Array): void {
    const { start, trial, columns } = this.tables;
    this.goTo(1);
    this.sum(this.slopeWeights);
    for (const i of columns) y[i] = trial[i]!;
    for (const i of this.adding) y[i] = start[i]! + this.gain(i, this.slopeWeights);
  }

  /** One component at a share of the length. */
  component(i: number, share: number): number {
    const { start, columnOf } = this.tables;
    if (share !== this.place) this.goTo(share);
    const column = columnOf[i]!;
    if (column >= 0) return start[i]! + this.sumOfStages(this.weights, column);
    if (!this.isSummed) this.sum(this.slopeWeights);
    return start[i]! + this.gain(i, this.slopeWeights);
  }

  /** Takes the sums for `gain` by these weights. */
  sum(slopeWeights: Float64Array): void {
    const { summed } = this;
    for (let k = 0; k < summed.length; k += 1) summed[k] = this.sumOfStages(slopeWeights, k);
    this.summedClock = 0;
    for (let s = 0; s < STAGES; s += 1) this.summedClock += slopeWeights[s]! * CLOCK[s]!;
    // Those of the place last asked about are gone, unless it was they.
    this.isSummed = slopeWeights === this.slopeWeights;
  }

  /** What a component that adds up gains, after `sum` of the same weights. */
  gain(i: number, slopeWeights: Float64Array): number {
    const { summed, h } = this;
    const { slopes, jacobian, drift } = this.tables;
    const width = summed.length;
    const dimension = drift.length;
    let sum = h * this.summedClock * drift[i]!;
    for (let s = 0, at = i; s < STAGES; s += 1, at += dimension) sum += slopeWeights[s]! * slopes[at]!;
    for (let k = 0, at = i * width; k < width; k += 1, at += 1) sum += jacobian[at]! * summed[k]!;
    return h * sum;
  }

  /** Σ wᵢ uᵢ of one column over all stages. */
  private sumOfStages(weights: Float64Array, column: number): number {
    const { stages } = this.tables;
    const width = this.summed.length;
    let sum = 0;
    for (let s = 0, i = column; s < STAGES; s += 1, i += width) sum += weights[s]! * stages[i]!;
    return sum;
  }

  private goTo(share: number): void {
    const { weights, slopeWeights } = this;
    const rest = 1 - share;
    this.place = share;
    this.isSummed = false;
    for (let s = 0; s < STAGES; s += 1) {
      weights[s] =
        share * (SOLUTION[s]! + rest * (DENSE_SQUARE_WEIGHTS[s]! + share * DENSE_CUBE_WEIGHTS[s]!));
      slopeWeights[s] =
        share *
        (SOLUTION_SLOPE_WEIGHTS[s]! +
          rest * (DENSE_SQUARE_SLOPE_WEIGHTS[s]! + share * DENSE_CUBE_SLOPE_WEIGHTS[s]!));
    }
  }
}
