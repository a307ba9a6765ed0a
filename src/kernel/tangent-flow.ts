/**
 * The algebra of src/numerics/tangent-flow.ts, for the numbers that are seated as those of a step: with A = h (J₀ + J₁)/2,
 *
 *   (I − ⅔A + ⅙A²) Φ₁ = (I + ⅓A) Φ₀,   Ψ = ⅓Φ₀ + ⅔Φ₁ − ⅙AΦ₁
 *
 * Φ stands row by row, a row for each component, a column for each coupled one at the beginning.
 */
import { factorise, solve } from './linear-solver.ts';
import { at, intAt, put, type Index } from './memory.ts';
import * as step from './step-seat.ts';

const THIRD = 0.333_333_333_333_333_3;
const TWO_THIRDS = 0.666_666_666_666_666_6;
const SIXTH = 0.166_666_666_666_666_66;

function keepJacobian(): void {
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1) put(step.jacobianBefore, i, at(step.jacobian, i));
}

/** From here on; the Jacobian must stand in its place. */
export function beginTangent(): void {
  const width = step.width;
  const entries = step.dimension * width;
  for (let i = 0; i < entries; i += 1) put(step.tangent, i, 0);
  for (let k = 0; k < width; k += 1) put(step.tangent, intAt(step.columns, k) * width + k, 1);
  keepJacobian();
}

/** Follows a step of that length, at whose end the Jacobian must stand in its place; false when it cannot be followed. */
export function followTangent(length: number): boolean {
  takeMean(length);
  fillSystem();
  if (!factorise()) return false;
  for (let k = 0; k < step.width; k += 1) followColumn(k, length);
  keepJacobian();
  return true;
}

/** A, by the coupled components alone. */
function takeMean(length: number): void {
  const width = step.width;
  const half = 0.5 * length;
  for (let r = 0, entry = step.mean; r < width; r += 1) {
    const row = intAt(step.columns, r) * width;
    for (let k = 0; k < width; k += 1, entry += 1)
      put(entry, 0, half * (at(step.jacobianBefore, row + k) + at(step.jacobian, row + k)));
  }
}

function fillSystem(): void {
  const width = step.width;
  for (let r = 0, entry = step.matrix; r < width; r += 1) {
    const row = step.mean + r * width;
    for (let k = 0; k < width; k += 1, entry += 1) {
      let square: number = 0;
      for (let j = 0, below = step.mean + k; j < width; j += 1, below += width)
        square += at(row, j) * at(below, 0);
      put(entry, 0, (r === k ? 1 : 0) - TWO_THIRDS * at(row, k) + SIXTH * square);
    }
  }
}

function followColumn(k: Index, length: number): void {
  const width = step.width;
  const side = step.side;
  const means = step.summed;
  const tangent = step.tangent + k;
  for (let r = 0, row = step.mean; r < width; r += 1, row += width) {
    let sum: number = 0;
    for (let j = 0; j < width; j += 1) sum += at(row, j) * at(tangent, intAt(step.columns, j) * width);
    put(side, r, at(tangent, intAt(step.columns, r) * width) + THIRD * sum);
  }
  solve(side);
  for (let r = 0, row = step.mean; r < width; r += 1, row += width) {
    let sum: number = 0;
    for (let j = 0; j < width; j += 1) sum += at(row, j) * at(side, j);
    const before = at(tangent, intAt(step.columns, r) * width);
    put(means, r, THIRD * before + TWO_THIRDS * at(side, r) - SIXTH * sum);
  }
  for (let r = 0; r < width; r += 1) put(tangent, intAt(step.columns, r) * width, at(side, r));
  for (let n = 0; n < step.addingCount; n += 1)
    addGrowth(intAt(step.adding, n) * width, tangent, 0.5 * length);
}

/** Of a component that adds up, by the mean of the others over the step. */
function addGrowth(row: Index, tangent: Index, half: number): void {
  let sum: number = 0;
  for (let j = 0; j < step.width; j += 1)
    sum += (at(step.jacobianBefore, row + j) + at(step.jacobian, row + j)) * at(step.summed, j);
  put(tangent, row, at(tangent, row) + half * sum);
}
