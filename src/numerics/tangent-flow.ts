/**
 * How the end of a journey moves with its beginning: the tangent Φ of the flow, Φ′ = J(x) Φ from Φ = I, along the steps that
 * an integrator takes. With A = h (J₀ + J₁)/2 over a step between two places,
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
import * as header from '../kernel/tangent-header.ts';
import { Image } from './image.ts';
import { doubles, Seat, takeTangentSeat } from './kernel.ts';

/** The algebra is done in the kernel, src/kernel/tangent-flow.ts, while a journey follows it. */
export class TangentFlow {
  readonly seat: Seat;
  private readonly size: number;
  private readonly tangentAt: number;
  private readonly numbersAt: number;

  /** Of so many components, of which so many are coupled. */
  constructor(dimension: number, width: number) {
    const image = new Image();
    image.zeros(header.TANGENT_HEADER_LENGTH);
    this.size = dimension * width;
    image.setCount(header.JACOBIAN_BEFORE, image.zeros(this.size));
    this.tangentAt = image.setCount(header.TANGENT, image.zeros(this.size));
    image.setCount(header.MEAN, image.zeros(this.size));
    for (const name of [header.COUPLED, header.BEFORE, header.AFTER])
      image.setCount(name, image.zeros(width * width));
    this.numbersAt = image.setCount(header.TANGENT_NUMBERS, image.zeros(header.TANGENT_NUMBERS_LENGTH));
    this.seat = new Seat(image.words(), { keepsWhatIsWritten: true });
  }

  /** The flow is followed from the beginning of the next journey on. */
  begin(): void {
    doubles[this.numbersAt + takeTangentSeat(this.seat) + header.BEHIND] = NaN;
  }

  /** Φ at the end of the last journey, row by row: of all components, by the coupled ones at the beginning. */
  tangent(): Float64Array {
    const from = takeTangentSeat(this.seat) + this.tangentAt;
    return doubles.slice(from, from + this.size);
  }
}
