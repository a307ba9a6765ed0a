/**
 * What the last attempt at a step says of any place within it, src/numerics/rosenbrock-step.ts: components with a column
 * by their stages; those that merely add up by the slopes of all stages, put together so that sums of components are kept.
 */
import { at, intAt, put, putInt, type Index } from './memory.ts';
import { IS_SUMMED, READ_PLACE, STEP_LENGTH, SUMMED_CLOCK } from './step-header.ts';
import * as step from './step-seat.ts';
import {
  CLOCK,
  DENSE_CUBE_SLOPE_WEIGHTS,
  DENSE_CUBE_WEIGHTS,
  DENSE_SQUARE_SLOPE_WEIGHTS,
  DENSE_SQUARE_WEIGHTS,
  SOLUTION,
  SOLUTION_SLOPE_WEIGHTS,
  STAGES,
} from './fixed-places.ts';

/** A step of another length is under way. */
export function startReading(): void {
  put(step.numbers, READ_PLACE, NaN);
}

/** Writes the state at the end. */
export function writeEnd(): void {
  goTo(1);
  sumColumns(step.readSlopeWeights);
  for (let k = 0; k < step.width; k += 1) {
    const i = intAt(step.columns, k);
    put(step.end, i, at(step.trial, i));
  }
  for (let n = 0; n < step.addingCount; n += 1) {
    const i = intAt(step.adding, n);
    put(step.end, i, at(step.start, i) + gain(i, step.readSlopeWeights));
  }
}

/** One component at a share of the length. */
export function component(i: Index, share: number): number {
  if (share !== at(step.numbers, READ_PLACE)) goTo(share);
  const column = intAt(step.columnOf, i);
  if (column >= 0) return at(step.start, i) + sumOfStages(step.readWeights, column);
  if (intAt(step.numbers, IS_SUMMED) === 0) sumColumns(step.readSlopeWeights);
  return at(step.start, i) + gain(i, step.readSlopeWeights);
}

/** Takes the sums for `gain` by these weights. */
export function sumColumns(slopeWeights: Index): void {
  for (let k = 0; k < step.width; k += 1) put(step.summed, k, sumOfStages(slopeWeights, k));
  let clock: number = 0;
  for (let s = 0; s < STAGES; s += 1) clock += at(slopeWeights, s) * at(CLOCK, s);
  put(step.numbers, SUMMED_CLOCK, clock);
  // Those of the place last asked about are gone, unless it was they.
  putInt(step.numbers, IS_SUMMED, slopeWeights === step.readSlopeWeights ? 1 : 0);
}

/** What a component that adds up gains, after `sumColumns` of the same weights. */
export function gain(i: Index, slopeWeights: Index): number {
  const width = step.width;
  const h = at(step.numbers, STEP_LENGTH);
  let sum = h * at(step.numbers, SUMMED_CLOCK) * at(step.drift, i);
  for (let s = 0, slope = step.slopes + i; s < STAGES; s += 1, slope += step.dimension)
    sum += at(slopeWeights, s) * at(slope, 0);
  const row = step.jacobian + i * width;
  for (let k = 0; k < width; k += 1) sum += at(row, k) * at(step.summed, k);
  return h * sum;
}

/** Σ wᵢ uᵢ of one column over all stages. */
function sumOfStages(weights: Index, column: Index): number {
  let sum: number = 0;
  for (let s = 0, stage = step.stages + column; s < STAGES; s += 1, stage += step.width)
    sum += at(weights, s) * at(stage, 0);
  return sum;
}

function goTo(share: number): void {
  const rest = 1 - share;
  put(step.numbers, READ_PLACE, share);
  putInt(step.numbers, IS_SUMMED, 0);
  for (let s = 0; s < STAGES; s += 1) {
    const dense = at(DENSE_SQUARE_WEIGHTS, s) + share * at(DENSE_CUBE_WEIGHTS, s);
    put(step.readWeights, s, share * (at(SOLUTION, s) + rest * dense));
    const slope = at(DENSE_SQUARE_SLOPE_WEIGHTS, s) + share * at(DENSE_CUBE_SLOPE_WEIGHTS, s);
    put(step.readSlopeWeights, s, share * (at(SOLUTION_SLOPE_WEIGHTS, s) + rest * slope));
  }
}
