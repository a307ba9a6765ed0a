/**
 * Solves small dense linear systems by LU decomposition, in place and without allocation.
 *
 * The pivot of a column is the entry that is largest as a share of its row: rows may be in different units. The first of
 * equals is taken, so a leading row that says xᵢ = bᵢ is obeyed to the last bit.
 */

export interface LinearSolver {
  /** Row by row; filled by the caller, overwritten by `factorise`. */
  readonly matrix: Float64Array;
  /** False when the matrix is singular. */
  factorise(): boolean;
  /** Replaces a right-hand side by the solution. */
  solve(b: Float64Array): void;
}

export function linearSolver(size: number): LinearSolver {
  const matrix = new Float64Array(size * size);
  const pivots = new Int32Array(size);
  /** Reciprocals: of the largest entry of each row, and of each diagonal once it is known. */
  const perRow = new Float64Array(size);
  const perDiagonal = new Float64Array(size);
  return {
    matrix,
    factorise() {
      measureRows(matrix, size, perRow);
      for (let k = 0; k < size; k += 1) {
        const pivot = pivotOf(matrix, size, k, perRow);
        pivots[k] = pivot;
        if (pivot !== k) swapRows(matrix, size, k, pivot);
        perRow[pivot] = perRow[k]!;
        const diagonal = matrix[k * size + k]!;
        if (diagonal === 0 || !Number.isFinite(diagonal)) return false;
        perDiagonal[k] = 1 / diagonal;
        eliminateBelow(matrix, size, k, perDiagonal[k]!);
      }
      return true;
    },
    solve(b) {
      for (let k = 0; k < size; k += 1) {
        const pivot = pivots[k]!;
        const value = b[pivot]!;
        b[pivot] = b[k]!;
        b[k] = value;
      }
      substituteForward(matrix, size, b);
      substituteBack(matrix, size, perDiagonal, b);
    },
  };
}

function measureRows(matrix: Float64Array, size: number, perRow: Float64Array): void {
  for (let i = 0, at = 0; i < size; i += 1) {
    let largest = 0;
    for (let j = 0; j < size; j += 1, at += 1) {
      const entry = Math.abs(matrix[at]!);
      if (!(entry <= largest)) largest = entry;
    }
    perRow[i] = 1 / largest;
  }
}

function pivotOf(matrix: Float64Array, size: number, k: number, perRow: Float64Array): number {
  let row = k;
  let most = Math.abs(matrix[k * size + k]!) * perRow[k]!;
  for (let i = k + 1, at = i * size + k; i < size; i += 1, at += size) {
    const share = Math.abs(matrix[at]!) * perRow[i]!;
    if (share > most) {
      row = i;
      most = share;
    }
  }
  return row;
}

/** Whole rows, multipliers too, so that the factors are those of the matrix with its rows reordered. */
function swapRows(matrix: Float64Array, size: number, a: number, b: number): void {
  for (let j = 0; j < size; j += 1) {
    const value = matrix[a * size + j]!;
    matrix[a * size + j] = matrix[b * size + j]!;
    matrix[b * size + j] = value;
  }
}

/** Stores each multiplier in the place of the zero it makes. */
function eliminateBelow(matrix: Float64Array, size: number, k: number, perDiagonal: number): void {
  const top = k * size;
  for (let i = k + 1; i < size; i += 1) {
    const row = i * size;
    if (matrix[row + k] === 0) continue;
    const factor = matrix[row + k]! * perDiagonal;
    matrix[row + k] = factor;
    for (let j = k + 1; j < size; j += 1) matrix[row + j]! -= factor * matrix[top + j]!;
  }
}

function substituteForward(matrix: Float64Array, size: number, b: Float64Array): void {
  for (let i = 1; i < size; i += 1) {
    let sum = b[i]!;
    for (let j = 0; j < i; j += 1) sum -= matrix[i * size + j]! * b[j]!;
    b[i] = sum;
  }
}

function substituteBack(
  matrix: Float64Array,
  size: number,
  perDiagonal: Float64Array,
  b: Float64Array,
): void {
  for (let i = size - 1; i >= 0; i -= 1) {
    let sum = b[i]!;
    for (let j = i + 1; j < size; j += 1) sum -= matrix[i * size + j]! * b[j]!;
    b[i] = sum * perDiagonal[i]!;
  }
}
