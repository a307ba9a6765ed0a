/**
 * The algebra of src/numerics/tangent-flow.ts, along the steps of the integrator that is seated: with A = h (J₀ + J₁)/2,
 *
 *   (I − ⅔A + ⅙A²) Φ₁ = (I + ⅓A) Φ₀,   Ψ = ⅓Φ₀ + ⅔Φ₁ − ⅙AΦ₁
 *
 * Systems are solved in the room of the step, which needs it only while it is tried.
 */
import { factorise, solve } from './linear-solver.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { startReading } from './rosenbrock-reading.ts';
import * as step from './step-seat.ts';
import { BEHIND } from './tangent-header.ts';
import * as own from './tangent-seat.ts';

const THIRD = 0.333_333_333_333_333_3;
const TWO_THIRDS = 0.666_666_666_666_666_6;
const SIXTH = 0.166_666_666_666_666_66;

function keepJacobian(): void {
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1) put(own.jacobianBefore, i, at(step.jacobian, i));
}

/** Whether anybody wants to know. */
export function isFollowed(): boolean {
  return own.seated !== 0;
}

/** A step has been made of which only the beginning is followed yet. */
export function leaveBehind(length: number): void {
  if (isFollowed()) put(own.numbers, BEHIND, length);
}

/** Follows what is left behind, or begins, where the integrator has just looked. */
export function followToHere(): void {
  if (!isFollowed()) return;
  const behind = at(own.numbers, BEHIND);
  if (behind > 0) follow(behind);
  else if (behind !== behind) begin();
  put(own.numbers, BEHIND, 0);
}

function begin(): void {
  fillTangent(0);
  for (let k = 0; k < step.width; k += 1) put(own.tangent, intAt(step.columns, k) * step.width + k, 1);
  keepJacobian();
}

function follow(length: number): void {
  takeMean(length);
  fillSystem();
  if (factorise()) for (let k = 0; k < step.width; k += 1) followColumn(k);
  else fillTangent(NaN);
  keepJacobian();
  // What was summed for reading was summed where the sides of the systems now stand.
  startReading();
}

function fillTangent(value: number): void {
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1) put(own.tangent, i, value);
}

/** h (J₀ + J₁)/2 of all components, row by row; those of the coupled ones are A. */
function takeMean(length: number): void {
  const half = 0.5 * length;
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1)
    put(own.mean, i, half * (at(own.jacobianBefore, i) + at(step.jacobian, i)));
}

/** The row of a coupled component in an array that has one for each. */
function rowOf(array: Index, r: Index): Index {
  return array + intAt(step.columns, r) * step.width;
}

function fillSystem(): void {
  const width = step.width;
  for (let r = 0, entry = step.matrix; r < width; r += 1) {
    const row = rowOf(own.mean, r);
    for (let k = 0; k < width; k += 1, entry += 1) {
      let square: number = 0;
      for (let j = 0; j < width; j += 1) square += at(row, j) * at(rowOf(own.mean, j), k);
      put(entry, 0, (r === k ? 1 : 0) - TWO_THIRDS * at(row, k) + SIXTH * square);
    }
  }
}

function followColumn(k: Index): void {
  const width = step.width;
  const side = own.side;
  const before = own.before;
  for (let r = 0; r < width; r += 1) put(before, r, at(rowOf(own.tangent, r), k));
  for (let r = 0; r < width; r += 1) put(side, r, at(before, r) + THIRD * product(rowOf(own.mean, r), before));
  solve(side);
  for (let r = 0; r < width; r += 1) {
    const changed = SIXTH * product(rowOf(own.mean, r), side);
    put(step.summed, r, THIRD * at(before, r) + TWO_THIRDS * at(side, r) - changed);
    put(rowOf(own.tangent, r), k, at(side, r));
  }
  for (let n = 0; n < step.addingCount; n += 1) {
    const row = intAt(step.adding, n) * width;
    const grown = product(own.mean + row, step.summed);
    put(own.tangent, row + k, at(own.tangent, row + k) + grown);
  }
}

/** Of a row with a column. */
function product(row: Index, column: Index): number {
  let sum: number = 0;
  for (let j = 0; j < step.width; j += 1) sum += at(row, j) * at(column, j);
  return sum;
}
