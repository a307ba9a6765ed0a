/**
 * One step of the Rosenbrock method, for the integrator that is seated; src/numerics/rosenbrock-step.ts is its other side.
 *
 * Only the components with a column take part in the linear systems; what becomes of the others, which merely add up, is
 * told by rosenbrock-reading.ts. Where the slopes depend on x itself, x moves through the stages as a component of slope 1
 * would: by h tᵢ.
 */
import { angleDrift, angleJacobian, timeJacobian } from './jacobian.ts';
import { factorise, solve } from './linear-solver.ts';
import { hostSlopes } from './host.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { gain, startReading, sumColumns } from './rosenbrock-reading.ts';
import { angleSlopes, timeSlopes } from './slopes.ts';
import {
  AGAINST_ANGLE,
  AGAINST_TIME,
  CALLS,
  CULPRIT,
  DIRECTION,
  JACOBIAN_COST,
  RELATIVE,
  STEP_LENGTH,
  STEP_X,
} from './step-header.ts';
import * as step from './step-seat.ts';
import { CLOCK, COUPLING, ERROR_SLOPE_WEIGHTS, STAGES, STAGE_PLACES, WEIGHTS } from './fixed-places.ts';

const GAMMA = 0.25;

/** From this stage on each adds the one before it to the last trial state, and the end adds the last. */
const FIRST_ADDED: Index = STAGES - 1;

/** Slopes at a state; the first component without a finite one, or −1. */
export function evaluate(x: number, state: Index, out: Index): Index {
  put(step.numbers, CALLS, at(step.numbers, CALLS) + 1);
  if (step.kind === AGAINST_ANGLE) angleSlopes(x, state, out);
  else if (step.kind === AGAINST_TIME) timeSlopes(at(step.numbers, DIRECTION), state, out);
  else hostSlopes(x, state, out);
  for (let i = 0; i < step.dimension; i += 1) {
    const slope = at(out, i);
    if (slope - slope === 0) continue;
    put(step.numbers, CULPRIT, i);
    return i;
  }
  return -1;
}

/** Takes slopes at the start, and the Jacobian of an engine; false when a slope is not finite. */
export function lookAhead(x: number): boolean {
  put(step.numbers, STEP_X, x);
  put(step.numbers, CULPRIT, -1);
  for (let i = 0; i < step.dimension; i += 1) put(step.trial, i, at(step.start, i));
  if (evaluate(x, step.trial, step.slopes) >= 0) return false;
  if (step.kind === AGAINST_ANGLE) {
    angleJacobian(x, step.trial, step.slopes, step.jacobian);
    angleDrift(x, step.trial, step.slopes, step.drift);
  } else if (step.kind === AGAINST_TIME)
    timeJacobian(at(step.numbers, DIRECTION), step.trial, step.slopes, step.jacobian);
  put(step.numbers, CALLS, at(step.numbers, CALLS) + at(step.numbers, JACOBIAN_COST));
  return true;
}

/** I − γ h J, of steps of length h. */
export function fillMatrix(h: number): void {
  const width = step.width;
  const matrix = step.matrix;
  const factor = GAMMA * h;
  for (let r = 0, entry = matrix; r < width; r += 1) {
    const row = step.jacobian + intAt(step.columns, r) * width;
    for (let k = 0; k < width; k += 1, entry += 1) put(entry, 0, -factor * at(row, k));
    put(matrix, r * width + r, at(matrix, r * width + r) + 1);
  }
}

/** Tries a step: its error as a share of the tolerance; NaN when it cannot be made. */
export function attempt(length: number): number {
  put(step.numbers, STEP_LENGTH, length);
  startReading();
  fillMatrix(length);
  if (!factorise()) return NaN;
  const x = at(step.numbers, STEP_X);
  for (let s = 0; s < STAGES; s += 1) {
    if (s > 0) {
      moveTrial(s);
      if (evaluate(x + at(STAGE_PLACES, s) * length, step.trial, step.slopes + s * step.dimension) >= 0)
        return NaN;
    }
    solveStage(s, length);
  }
  addStage(STAGES - 1);
  return errorShare();
}

/** To where a stage looks, by the stages before it. Only what slopes depend on moves. */
function moveTrial(s: Index): void {
  if (s >= FIRST_ADDED) {
    addStage(s - 1);
    return;
  }
  const width = step.width;
  const weights = WEIGHTS + s * STAGES;
  for (let k = 0; k < width; k += 1) {
    const component = intAt(step.columns, k);
    let sum = at(step.start, component);
    for (let j = 0, stage = step.stages + k; j < s; j += 1, stage += width)
      sum += at(weights, j) * at(stage, 0);
    put(step.trial, component, sum);
  }
}

function addStage(s: Index): void {
  const stage = step.stages + s * step.width;
  for (let k = 0; k < step.width; k += 1) {
    const component = intAt(step.columns, k);
    put(step.trial, component, at(step.trial, component) + at(stage, k));
  }
}

function solveStage(s: Index, h: number): void {
  const width = step.width;
  const slopes = step.slopes + s * step.dimension;
  const coupling = COUPLING + s * STAGES;
  const drifted = h * h * at(CLOCK, s);
  const own = step.stages + s * width;
  for (let k = 0; k < width; k += 1) {
    const component = intAt(step.columns, k);
    let sum = h * at(slopes, component) + drifted * at(step.drift, component);
    for (let j = 0, stage = step.stages + k; j < s; j += 1, stage += width)
      sum += at(coupling, j) * at(stage, 0);
    put(own, k, GAMMA * sum);
  }
  solve(own);
}

/** Root of the mean square over the components with a tolerance. */
function errorShare(): number {
  const last = step.stages + (STAGES - 1) * step.width;
  const count = step.steeringCount;
  let sum: number = 0;
  if (step.addingSteers !== 0) sumColumns(ERROR_SLOPE_WEIGHTS);
  for (let n = 0; n < count; n += 1) {
    const i = intAt(step.steering, n);
    const k = intAt(step.columnOf, i);
    const error = k < 0 ? gain(i, ERROR_SLOPE_WEIGHTS) : at(last, k);
    const share = shareOfTolerance(i, error);
    sum += share * share;
  }
  return Math.sqrt(sum / (count > 0 ? count : 1));
}

/** An error of one component, as a share of what is tolerated. */
export function shareOfTolerance(i: Index, error: number): number {
  const size = Math.max(Math.abs(at(step.start, i)), Math.abs(at(step.trial, i)));
  return error / (at(step.absolute, i) + at(step.numbers, RELATIVE) * size);
}
