/**
 * The linear systems of a step: factors L U of a small dense matrix, rows exchanged so that each pivot is the largest of its
 * column as a share of its row (scaled partial pivoting; Golub and Van Loan, Matrix Computations, from memory).
 */
import { at, intAt, put, putInt, type Index } from './memory.ts';
import * as step from './step-seat.ts';

/** False when the matrix is singular. */
export function factorise(): boolean {
  const matrix = step.matrix;
  const size = step.width;
  measureRows(matrix, size);
  for (let k = 0; k < size; k += 1) {
    const pivot = pivotOf(matrix, size, k);
    putInt(step.pivots, k, pivot);
    if (pivot !== k) swapRows(matrix, size, k, pivot);
    put(step.perRow, pivot, at(step.perRow, k));
    const diagonal = at(matrix, k * size + k);
    if (diagonal === 0 || diagonal - diagonal !== 0) return false;
    put(step.perDiagonal, k, 1 / diagonal);
    eliminateBelow(matrix, size, k, 1 / diagonal);
  }
  return true;
}

/** Replaces a right-hand side by the solution. */
export function solve(b: Index): void {
  const matrix = step.matrix;
  const size = step.width;
  for (let k = 0; k < size; k += 1) {
    const pivot = intAt(step.pivots, k);
    if (pivot === k) continue;
    const value = at(b, pivot);
    put(b, pivot, at(b, k));
    put(b, k, value);
  }
  for (let i = 1; i < size; i += 1) {
    let sum = at(b, i);
    for (let j = 0, entry = matrix + i * size; j < i; j += 1, entry += 1) sum -= at(entry, 0) * at(b, j);
    put(b, i, sum);
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    let sum = at(b, i);
    for (let j = i + 1, entry = matrix + i * size + i + 1; j < size; j += 1, entry += 1)
      sum -= at(entry, 0) * at(b, j);
    put(b, i, sum * at(step.perDiagonal, i));
  }
}

/** The same for as many sides as the system has rows, which stand row by row, one beside the other. */
export function solveAll(sides: Index): void {
  const matrix = step.matrix;
  const size = step.width;
  for (let k = 0; k < size; k += 1) {
    const pivot = intAt(step.pivots, k);
    if (pivot !== k) swapRows(sides, size, k, pivot);
  }
  for (let i = 1; i < size; i += 1)
    for (let j = 0; j < i; j += 1) takeAway(sides, size, i, j, at(matrix, i * size + j));
  for (let i = size - 1; i >= 0; i -= 1) {
    for (let j = i + 1; j < size; j += 1) takeAway(sides, size, i, j, at(matrix, i * size + j));
    const row = sides + i * size;
    for (let k = 0; k < size; k += 1) put(row, k, at(row, k) * at(step.perDiagonal, i));
  }
}

/** From row i so many times row j. */
function takeAway(rows: Index, size: Index, i: Index, j: Index, times: number): void {
  if (times === 0) return;
  const row = rows + i * size;
  const other = rows + j * size;
  for (let k = 0; k < size; k += 1) put(row, k, at(row, k) - times * at(other, k));
}

function measureRows(matrix: Index, size: Index): void {
  for (let i = 0, entry = matrix; i < size; i += 1) {
    let largest: number = 0;
    for (let j = 0; j < size; j += 1, entry += 1) {
      const value = Math.abs(at(entry, 0));
      if (!(value <= largest)) largest = value;
    }
    put(step.perRow, i, 1 / largest);
  }
}

function pivotOf(matrix: Index, size: Index, k: Index): Index {
  let row = k;
  let most = Math.abs(at(matrix, k * size + k)) * at(step.perRow, k);
  for (let i = k + 1, entry = matrix + i * size + k; i < size; i += 1, entry += size) {
    const share = Math.abs(at(entry, 0)) * at(step.perRow, i);
    if (share > most) {
      row = i;
      most = share;
    }
  }
  return row;
}

/** Whole rows, multipliers too, so that the factors are those of the matrix with its rows reordered. */
function swapRows(matrix: Index, size: Index, a: Index, b: Index): void {
  for (let j = 0; j < size; j += 1) {
    const value = at(matrix, a * size + j);
    put(matrix, a * size + j, at(matrix, b * size + j));
    put(matrix, b * size + j, value);
  }
}

/** Stores each multiplier in the place of the zero it makes. */
function eliminateBelow(matrix: Index, size: Index, k: Index, perDiagonal: number): void {
  const top = matrix + k * size;
  const end = matrix + size * size;
  for (let row = top + size; row < end; row += size) {
    const value = at(row, k);
    if (value === 0) continue;
    const factor = value * perDiagonal;
    put(row, k, factor);
    for (let j = k + 1; j < size; j += 1) put(row, j, at(row, j) - factor * at(top, j));
  }
}
