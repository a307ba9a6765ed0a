/**
 * Solves small dense linear systems by LU decomposition, in place and without allocation.
 *
 * The pivot of a column is the entry that is largest as a share of its row: rows may be in different units. The first of
 * equals is taken.
 */

/** A class, so that code compiled for one system serves for the next. */
export class DenseLinearSolver {
  /** Row by row; filled by the caller, overwritten by `factorise`. */
  readonly matrix: Float64Array;
  private readonly size: number;
  private readonly pivots: Int32Array;
  /** Reciprocals: of the largest entry of each row, and of each diagonal once it is known. */
  private readonly perRow: Float64Array;
  private readonly perDiagonal: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.matrix = new Float64Array(size * size);
    this.pivots = new Int32Array(size);
    this.perRow = new Float64Array(size);
    this.perDiagonal = new Float64Array(size);
  }

  /** False when the matrix is singular. */
  factorise(): boolean {
    const { matrix, size, pivots, perRow, perDiagonal } = this;
    measureRows(matrix, size, perRow);
    for (let k = 0; k < size; k += 1) {
      const pivot = pivotOf(matrix, size, k, perRow);
      pivots[k] = pivot;
      if (pivot !== k) swapRows(matrix, size, k, pivot);
      perRow[pivot] = perRow[k]!;
      const diagonal = matrix[k * size + k]!;
      if (diagonal === 0 || !Number.isFinite(diagonal)) return false;
      perDiagonal[k] = 1 / diagonal;
      eliminateBelow(matrix, size, k, 1 / diagonal);
    }
    return true;
  }

  /** Replaces the right-hand side that begins at `offset` of an array by the solution. */
  solve(b: Float64Array, offset = 0): void {
    const { matrix, size, pivots, perDiagonal } = this;
    for (let k = 0; k < size; k += 1) {
      const pivot = pivots[k]!;
      if (pivot === k) continue;
      const value = b[offset + pivot]!;
      b[offset + pivot] = b[offset + k]!;
      b[offset + k] = value;
    }
    for (let i = 1; i < size; i += 1) {
      let sum = b[offset + i]!;
      for (let j = 0, at = i * size; j < i; j += 1, at += 1) sum -= matrix[at]! * b[offset + j]!;
      b[offset + i] = sum;
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      let sum = b[offset + i]!;
      for (let j = i + 1, at = i * size + j; j < size; j += 1, at += 1) sum -= matrix[at]! * b[offset + j]!;
      b[offset + i] = sum * perDiagonal[i]!;
    }
  }
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
  for (let row = top + size; row < size * size; row += size) {
    if (matrix[row + k] === 0) continue;
    const factor = matrix[row + k]! * perDiagonal;
    matrix[row + k] = factor;
    for (let j = k + 1; j < size; j += 1) matrix[row + j]! -= factor * matrix[top + j]!;
  }
}
