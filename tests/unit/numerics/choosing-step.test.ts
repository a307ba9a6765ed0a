/**
 * A vessel held at one pressure by a wide port: its energy e is fed with s(t) = cos t, and the port lets so much through that
 * e stays where it is. What flows out has the vessel's temperature, what flows in another, so that the mass
 *
 *   e′ = s + T f,   m′ = f = −K (e − 1),   T = T_out where f < 0 and T_in where f > 0
 *
 * of an infinitely wide port goes by m′ = −s/T: known exactly, while K makes the slopes as stiff as you like.
 */
import { describe, expect, it } from 'vitest';
import type { OdeProblem } from '../../../src/numerics/integrator.ts';
import { RosenbrockIntegrator } from '../../../src/numerics/rosenbrock-integrator.ts';

const WIDTH = 1e9;
const [OUT, IN] = [2.5, 1];
const TOLERANCE = 1e-6;

/** The temperature of what flows, chosen anew at every state unless it is kept. */
class Vessel implements OdeProblem {
  readonly dimension = 2;
  readonly choices: NonNullable<OdeProblem['choices']> | undefined;
  private temperature = OUT;
  private kept = OUT;
  private isKept = false;

  constructor(keeps: boolean) {
    this.choices = keeps
      ? {
          keep: () => {
            this.kept = this.temperature;
            this.isKept = true;
          },
          release: () => {
            this.isKept = false;
          },
          restore: () => {
            this.isKept = true;
          },
          areStale: (_t, [e]) => this.kept !== this.chosen(e!),
        }
      : undefined;
  }

  private readonly chosen = (e: number): number => (e > 1 ? OUT : IN);

  derivative(t: number, [e]: Float64Array, slopes: Float64Array): void {
    this.temperature = this.isKept ? this.kept : this.chosen(e!);
    const flow = -WIDTH * (e! - 1);
    slopes[0] = Math.cos(t) + this.temperature * flow;
    slopes[1] = flow;
  }
}

function followed(keeps: boolean): { mass: number; steps: number; reason: string } {
  const problem = new Vessel(keeps);
  const integrator = new RosenbrockIntegrator(problem, {
    relative: TOLERANCE,
    absolute: Float64Array.of(TOLERANCE, TOLERANCE),
  });
  const y = Float64Array.of(1, 10);
  const { reason } = integrator.advance(0, y, Math.PI, { stepLimit: 20_000 });
  return { mass: y[1]! - 10, steps: integrator.counters.acceptedSteps, reason };
}

describe('a flow that turns round between unlike temperatures', () => {
  it('is followed in few steps by those that keep its temperature', () => {
    const { mass, steps, reason } = followed(true);
    expect(reason).toBe('end');
    // Out over the first quarter turn, in over the second.
    expect(mass).toBeCloseTo(1 / IN - 1 / OUT, 4);
    expect(steps).toBeLessThan(200);
  });

  it('is hard to follow for those that do not', () => {
    const { steps } = followed(false);
    expect(steps).toBeGreaterThan(10 * followed(true).steps);
  });
});

it('lets go of its choice at the end of a journey', () => {
  const problem = new Vessel(true);
  const integrator = new RosenbrockIntegrator(problem, {
    relative: TOLERANCE,
    absolute: Float64Array.of(TOLERANCE, TOLERANCE),
  });
  integrator.advance(0, Float64Array.of(1, 10), 1, { stepLimit: 1000 });
  const slopes = new Float64Array(2);
  for (const [energy, temperature] of [
    [1.5, OUT],
    [0.5, IN],
  ] as const) {
    problem.derivative(0, Float64Array.of(energy, 10), slopes);
    expect((slopes[0]! - 1) / slopes[1]!).toBeCloseTo(temperature, 6);
  }
});
