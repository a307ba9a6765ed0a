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
  if (factorise()) for (let k = 0; k < step.width; k += 1) followColumn(k, length);
  else fillTangent(NaN);
  keepJacobian();
  // What was summed for reading was summed where the sides of the systems now stand.
  startReading();
}

function fillTangent(value: number): void {
  const entries = step.dimension * step.width;
  for (let i = 0; i < entries; i += 1) put(own.tangent, i, value);
}

/** A, by the coupled components alone. */
function takeMean(length: number): void {
  const width = step.width;
  const half = 0.5 * length;
  for (let r = 0, entry = own.mean; r < width; r += 1) {
    const row = intAt(step.columns, r) * width;
    for (let k = 0; k < width; k += 1, entry += 1)
      put(entry, 0, half * (at(own.jacobianBefore, row + k) + at(step.jacobian, row + k)));
  }
}

function fillSystem(): void {
  const width = step.width;
  for (let r = 0, entry = step.matrix; r < width; r += 1) {
    const row = own.mean + r * width;
    for (let k = 0; k < width; k += 1, entry += 1) {
      let square: number = 0;
      for (let j = 0, below = own.mean + k; j < width; j += 1, below += width)
        square += at(row, j) * at(below, 0);
      put(entry, 0, (r === k ? 1 : 0) - TWO_THIRDS * at(row, k) + SIXTH * square);
    }
  }
}

function followColumn(k: Index, length: number): void {
  const width = step.width;
  const side = own.side;
  const means = step.summed;
  const tangent = own.tangent + k;
  for (let r = 0, row = own.mean; r < width; r += 1, row += width) {
    let sum: number = 0;
    for (let j = 0; j < width; j += 1) sum += at(row, j) * at(tangent, intAt(step.columns, j) * width);
    put(side, r, at(tangent, intAt(step.columns, r) * width) + THIRD * sum);
  }
  solve(side);
  for (let r = 0, row = own.mean; r < width; r += 1, row += width) {
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
    sum += (at(own.jacobianBefore, row + j) + at(step.jacobian, row + j)) * at(step.summed, j);
  put(tangent, row, at(tangent, row) + half * sum);
}
