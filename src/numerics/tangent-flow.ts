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
import * as header from '../kernel/step-header.ts';
import { Image } from './image.ts';
import { doubles, kernel, noSlopes, Seat, takeStepSeat } from './kernel.ts';

/** The algebra is done in the kernel, src/kernel/tangent-flow.ts. */
export class TangentFlow {
  private readonly seat: Seat;
  private readonly size: number;
  private readonly jacobianAt: number;
  private readonly tangentAt: number;

  constructor(dimension: number, coupled: readonly number[]) {
    const width = coupled.length;
    const adding = Array.from({ length: dimension }, (_, i) => i).filter((i) => !coupled.includes(i));
    const image = new Image();
    image.zeros(header.STEP_HEADER_LENGTH);
    image.setCount(header.STEP_DIMENSION, dimension);
    image.setCount(header.WIDTH, width);
    image.setCount(header.ADDING_COUNT, adding.length);
    image.setCount(header.COLUMNS, image.counts(coupled));
    image.setCount(header.ADDING, image.counts(adding));
    for (const name of [header.MATRIX, header.MEAN]) image.setCount(name, image.zeros(width * width));
    for (const name of [header.PIVOTS, header.PER_ROW, header.PER_DIAGONAL, header.SUMMED, header.SIDE])
      image.setCount(name, image.zeros(width));
    image.setCount(header.JACOBIAN_BEFORE, image.zeros(dimension * width));
    this.size = dimension * width;
    this.jacobianAt = image.setCount(header.JACOBIAN, image.zeros(this.size));
    this.tangentAt = image.setCount(header.TANGENT, image.zeros(this.size));
    this.seat = new Seat(image.words());
  }

  /** The flow is followed from here; `jacobian` holds ∂slope/∂component of the coupled components, row by row. */
  begin(jacobian: Float64Array): void {
    this.put(jacobian);
    kernel.beginTangent();
  }

  /** Follows a step of that length, given the Jacobian at its end. */
  step(length: number, jacobian: Float64Array): void {
    const base = this.put(jacobian);
    if (kernel.followTangent(length) === 0)
      doubles.fill(NaN, base + this.tangentAt, base + this.tangentAt + this.size);
  }

  /** Φ, row by row: of all components, by the coupled ones at the beginning. */
  tangent(): Float64Array {
    const from = takeStepSeat(this.seat, noSlopes) + this.tangentAt;
    return doubles.slice(from, from + this.size);
  }

  private put(jacobian: Float64Array): number {
    const base = takeStepSeat(this.seat, noSlopes);
    doubles.set(jacobian, base + this.jacobianAt);
    return base;
  }
}
