/**
 * The algebra of src/numerics/tangent-flow.ts, along the steps of the integrator that is seated: with A = h (J₀ + J₁)/2,
 *
 *   (I − ⅔A + ⅙A²) Φ₁ = (I + ⅓A) Φ₀,   Ψ = ⅓Φ₀ + ⅔Φ₁ − ⅙AΦ₁
 *
 * Systems are solved in the room of the step, which needs it only while it is tried.
 */
import { factorise, solveAll } from './linear-solver.ts';
import { at, intAt, put, type Index } from './memory.ts';
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
  if (factorise()) goOn();
  else fillTangent(NaN);
  keepJacobian();
}

function fillTangent(value: number): void {
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1) put(own.tangent, i, value);
}

/** h (J₀ + J₁)/2 of all components, row by row, and A, its rows of the coupled ones. */
function takeMean(length: number): void {
  const width = step.width;
  const half = 0.5 * length;
  const entries = step.dimension * width;
  for (let i = 0; i < entries; i += 1)
    put(own.mean, i, half * (at(own.jacobianBefore, i) + at(step.jacobian, i)));
  for (let r = 0; r < width; r += 1) copyRow(rowOf(own.mean, r), own.coupled + r * width);
}

/** The row of a coupled component in an array that has one for each. */
function rowOf(array: Index, r: Index): Index {
  return array + intAt(step.columns, r) * step.width;
}

function copyRow(from: Index, to: Index): void {
  for (let k = 0; k < step.width; k += 1) put(to, k, at(from, k));
}

/** Adds to a row so many times those of a square array that a row of factors asks for. Many factors are zero. */
function addRows(row: Index, times: number, factors: Index, rows: Index): void {
  const width = step.width;
  for (let j = 0, other = rows; j < width; j += 1, other += width) {
    const factor = times * at(factors, j);
    if (factor === 0) continue;
    for (let k = 0; k < width; k += 1) put(row, k, at(row, k) + factor * at(other, k));
  }
}

function fillSystem(): void {
  const width = step.width;
  for (let r = 0; r < width; r += 1) {
    const row = step.matrix + r * width;
    const factors = own.coupled + r * width;
    for (let k = 0; k < width; k += 1) put(row, k, (r === k ? 1 : 0) - TWO_THIRDS * at(factors, k));
    addRows(row, SIXTH, factors, own.coupled);
  }
}

/** From Φ₀ to Φ₁, by the factors of the system. */
function goOn(): void {
  const width = step.width;
  const before = own.before;
  const after = own.after;
  for (let r = 0; r < width; r += 1) copyRow(rowOf(own.tangent, r), before + r * width);
  for (let r = 0; r < width; r += 1) {
    copyRow(before + r * width, after + r * width);
    addRows(after + r * width, THIRD, own.coupled + r * width, before);
  }
  solveAll(after);
  for (let r = 0; r < width; r += 1) {
    const row = before + r * width;
    copyRow(after + r * width, rowOf(own.tangent, r));
    for (let k = 0; k < width; k += 1)
      put(row, k, THIRD * at(row, k) + TWO_THIRDS * at(after + r * width, k));
    addRows(row, -SIXTH, own.coupled + r * width, after);
  }
  // Where Φ₀ stood, Ψ stands now.
  for (let n = 0; n < step.addingCount; n += 1) {
    const row = intAt(step.adding, n) * width;
    addRows(own.tangent + row, 1, own.mean + row, before);
  }
}
