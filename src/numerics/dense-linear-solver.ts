/** Solves small dense linear systems, by the solver of the kernel: src/kernel/linear-solver.ts. */
import * as header from '../kernel/step-header.ts';
import { Image } from './image.ts';
import { doubles, kernel, nobody, Seat, takeStepSeat } from './kernel.ts';

export class DenseLinearSolver {
  /** Row by row; filled by the caller. */
  readonly matrix: Float64Array;
  private readonly size: number;
  private readonly seat: Seat;
  private readonly matrixAt: number;
  private readonly sideAt: number;

  constructor(size: number) {
    const image = new Image();
    image.zeros(header.STEP_HEADER_LENGTH);
    image.setCount(header.WIDTH, size);
    this.matrixAt = image.setCount(header.MATRIX, image.zeros(size * size));
    this.sideAt = image.setCount(header.SCRATCH, image.zeros(size));
    for (const name of [header.PIVOTS, header.PER_ROW, header.PER_DIAGONAL])
      image.setCount(name, image.zeros(size));
    this.seat = new Seat(image.words());
    this.matrix = new Float64Array(size * size);
    this.size = size;
  }

  /** False when the matrix is singular. */
  factorise(): boolean {
    const base = takeStepSeat(this.seat, nobody);
    doubles.set(this.matrix, base + this.matrixAt);
    return kernel.factorise() !== 0;
  }

  /** Replaces a right-hand side by the solution. */
  solve(b: Float64Array): void {
    const side = takeStepSeat(this.seat, nobody) + this.sideAt;
    doubles.set(b, side);
    kernel.solve(side);
    for (let i = 0; i < this.size; i += 1) b[i] = doubles[side + i]!;
  }
}
