/**
 * How the end of a journey moves with its beginning: the tangent Φ of the flow, Φ′ = J(x) Φ from Φ = I, along steps that
 * an integrator has taken. With A = h (J₀ + J₁)/2 over a step between two places,
 *
 *   (I − ⅔A + ⅙A²) Φ₁ = (I + ⅓A) Φ₀
 *
 * which is the Padé approximant (1, 2) of the exponential: of order 3 where J is constant, and L-stable, as steps are long
 * where the problem is stiff. That is Φ₁ − Φ₀ = A Ψ with Ψ = ⅓Φ₀ + ⅔Φ₁ − ⅙AΦ₁, the mean of Φ over the step; components that
 * merely add up grow by their own rows of h (J₀ + J₁)/2 times the same Ψ, so that sums which the slopes keep, Φ keeps too.
 * Steps that hold a tolerance of 1e-4 tell the tangent to some hundredths.
 *
 * Source: Hairer & Wanner, Solving Ordinary Differential Equations II, section IV.3 (from memory).
 */
import { DenseLinearSolver } from './dense-linear-solver.ts';

export class TangentFlow {
  /** ∂slope/∂component of the coupled components, row by row, at the place come to: filled in before `begin` and `step`. */
  jacobian: Float64Array;
  /** Φ, row by row: of all components, by the coupled ones at the beginning. */
  tangent: Float64Array;
  private readonly columns: readonly number[];
  private readonly adding: readonly number[];
  private before: Float64Array;
  private next: Float64Array;
  private readonly mean: Float64Array;
  private readonly side: Float64Array;
  private readonly means: Float64Array;
  private readonly solver: DenseLinearSolver;

  constructor(dimension: number, coupled: readonly number[]) {
    const size = dimension * coupled.length;
    this.columns = coupled;
    this.adding = Array.from({ length: dimension }, (_, i) => i).filter((i) => !coupled.includes(i));
    this.jacobian = new Float64Array(size);
    this.before = new Float64Array(size);
    this.tangent = new Float64Array(size);
    this.next = new Float64Array(size);
    this.mean = new Float64Array(coupled.length * coupled.length);
    this.side = new Float64Array(coupled.length);
    this.means = new Float64Array(coupled.length);
    this.solver = new DenseLinearSolver(coupled.length);
  }

  begin(): void {
    const { columns, tangent } = this;
    tangent.fill(0);
    for (const [k, component] of columns.entries()) tangent[component * columns.length + k] = 1;
    this.swapJacobians();
  }

  /** Follows a step of that length. */
  step(length: number): void {
    this.takeMean(length);
    if (this.factorise()) for (let k = 0; k < this.columns.length; k += 1) this.followColumn(k, length);
    else this.next.fill(NaN);
    [this.tangent, this.next] = [this.next, this.tangent];
    this.swapJacobians();
  }

  private swapJacobians(): void {
    [this.before, this.jacobian] = [this.jacobian, this.before];
  }

  /** A, by the coupled components alone. */
  private takeMean(length: number): void {
    const { columns, mean, before, jacobian } = this;
    const width = columns.length;
    for (let r = 0, at = 0; r < width; r += 1) {
      const row = columns[r]! * width;
      for (let k = 0; k < width; k += 1, at += 1)
        mean[at] = 0.5 * length * (before[row + k]! + jacobian[row + k]!);
    }
  }

  private factorise(): boolean {
    const { columns, mean, solver } = this;
    const width = columns.length;
    for (let r = 0, at = 0; r < width; r += 1)
      for (let k = 0; k < width; k += 1, at += 1) {
        let square = 0;
        for (let j = 0; j < width; j += 1) square += mean[r * width + j]! * mean[j * width + k]!;
        solver.matrix[at] = (r === k ? 1 : 0) - (2 / 3) * mean[at]! + square / 6;
      }
    return solver.factorise();
  }

  private followColumn(k: number, length: number): void {
    const { columns, adding, mean, side, means, tangent, next } = this;
    const width = columns.length;
    for (let r = 0, at = 0; r < width; r += 1) {
      let sum = 0;
      for (let j = 0; j < width; j += 1, at += 1) sum += mean[at]! * tangent[columns[j]! * width + k]!;
      side[r] = tangent[columns[r]! * width + k]! + sum / 3;
    }
    this.solver.solve(side);
    for (let r = 0, at = 0; r < width; r += 1) {
      let sum = 0;
      for (let j = 0; j < width; j += 1, at += 1) sum += mean[at]! * side[j]!;
      means[r] = (tangent[columns[r]! * width + k]! + 2 * side[r]! - sum / 2) / 3;
      next[columns[r]! * width + k] = side[r]!;
    }
    for (const component of adding)
      next[component * width + k] = tangent[component * width + k]! + this.growth(component * width, length);
  }

  /** Of a component that adds up, by the mean of the others over the step. */
  private growth(row: number, length: number): number {
    const { means, before, jacobian } = this;
    let sum = 0;
    for (let j = 0; j < means.length; j += 1) sum += (before[row + j]! + jacobian[row + j]!) * means[j]!;
    return 0.5 * length * sum;
  }
}
