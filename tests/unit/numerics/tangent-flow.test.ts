/** The tangent of a flow along the steps of a journey, against flows that are known in closed form. */
import { describe, expect, it } from 'vitest';
import type { OdeProblem } from '../../../src/numerics/integrator.ts';
import { RosenbrockIntegrator } from '../../../src/numerics/rosenbrock-integrator.ts';
import { TangentFlow } from '../../../src/numerics/tangent-flow.ts';

/** From 0 on by way of all `stops`, in steps as the tolerance has them. */
function followed(problem: OdeProblem, start: readonly number[], stops: readonly number[]): Float64Array {
  const { dimension, coupled } = problem;
  const integrator = new RosenbrockIntegrator(problem, {
    relative: 1e-5,
    absolute: new Float64Array(dimension).fill(1e-5),
  });
  const tangent = new TangentFlow(dimension, coupled?.length ?? dimension);
  const y = Float64Array.from(start);
  tangent.begin();
  let x = 0;
  for (const stop of stops) {
    expect(integrator.advance(x, y, stop, { stepLimit: 1000, tangent }).reason).toBe('end');
    x = stop;
  }
  return tangent.tangent();
}

/** y₀′ = −y₀ + 2 y₂, y₂′ = −3 y₂, while component 1 adds up y₀ + y₂/2. */
const linear: OdeProblem = {
  dimension: 3,
  coupled: [0, 2],
  derivative: (_x, y, slopes) => {
    slopes.set([-y[0]! + 2 * y[2]!, y[0]! + y[2]! / 2, -3 * y[2]!]);
  },
};

const falling = (rate: (x: number) => number): OdeProblem => ({
  dimension: 1,
  derivative: (x, y, slopes) => {
    slopes[0] = -rate(x) * y[0]!;
  },
  jacobian: (x, _y, _slopes, jacobian) => {
    jacobian[0] = -rate(x);
    return 1;
  },
});

describe('the tangent', () => {
  it.each([[[1]], [[0.31, 0.77, 1]]])('of a linear system is its exponential, stopping at %j', (stops) => {
    const tangent = followed(linear, [1, 0, 2], stops);
    const [slow, quick] = [Math.exp(-1), Math.exp(-3)];
    const exact = [
      ...[slow, slow - quick],
      ...[1 - slow, 1 - slow - (1 - quick) / 3 + (1 - quick) / 6],
      ...[0, quick],
    ];
    for (const [i, value] of exact.entries()) expect(Math.abs(tangent[i]! - value)).toBeLessThan(1e-4);
  });

  it('follows a Jacobian that changes: of y′ = −2xy it is e^(−x²)', () => {
    const [value] = followed(
      falling((x) => 2 * x),
      [1],
      [1.5],
    );
    expect(Math.abs(value! / Math.exp(-2.25) - 1)).toBeLessThan(2e-3);
  });

  it('forgets within a step what dies out at once', () => {
    const [value] = followed(
      falling(() => 1e6),
      [0],
      [1],
    );
    expect(Math.abs(value!)).toBeLessThan(1e-5);
  });

  it.each([0.5, 2.4, 2.45, 30])(
    'of a turn by %f in one step is the approximant, as of a complex number',
    (angle) => {
      const turning: OdeProblem = {
        dimension: 2,
        derivative: (_x, y, slopes) => {
          slopes.set([-angle * y[1]!, angle * y[0]!]);
        },
        jacobian: (_x, _y, _slopes, jacobian) => {
          jacobian.set([0, -angle, angle, 0]);
          return 1;
        },
      };
      // (1 + z/3)/(1 − 2z/3 + z²/6) at z = iθ.
      const [above, re, im] = [angle / 3, 1 - (angle * angle) / 6, (-2 * angle) / 3];
      const size = re * re + im * im;
      const [real, imaginary] = [(re + above * im) / size, (above * re - im) / size];
      const exact = [real, -imaginary, imaginary, real];
      for (const [i, value] of followed(turning, [0, 0], [1]).entries())
        expect(value).toBeCloseTo(exact[i]!, 12);
    },
  );

  it('is no number where its squares have no end', () => {
    const [value] = followed(
      falling(() => 1e200),
      [0],
      [1],
    );
    expect(value).toBeNaN();
  });

  it('begins anew when it is told to', () => {
    const tangent = new TangentFlow(1, 1);
    const problem = falling(() => 1);
    const journey = { stepLimit: 1000, tangent };
    for (let round = 0; round < 2; round += 1) {
      const integrator = new RosenbrockIntegrator(problem, {
        relative: 1e-6,
        absolute: Float64Array.of(1e-6),
      });
      tangent.begin();
      integrator.advance(0, Float64Array.of(1), 1, journey);
      expect(Math.abs(tangent.tangent()[0]! - Math.exp(-1))).toBeLessThan(1e-4);
    }
  });
});
