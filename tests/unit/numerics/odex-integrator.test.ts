/** The integrator's contract: how journeys end, what they leave behind, what it counts. */
import { describe, expect, it } from 'vitest';
import type {
  AcceptedStep,
  ComponentReader,
  Integrator,
  OdeProblem,
} from '../../../src/numerics/integrator.ts';
import { odexIntegrator } from '../../../src/numerics/odex-integrator.ts';

type Derivative = OdeProblem['derivative'];

const integratorOf = (derivative: Derivative, dimension = 1, tolerance = 1e-9): Integrator =>
  odexIntegrator(
    { dimension, derivative },
    { relative: tolerance, absolute: new Float64Array(dimension).fill(tolerance) },
  );

const grows: Derivative = (_x, y, slopes) => {
  slopes[0] = y[0]!;
};
const steady: Derivative = (_x, _y, slopes) => {
  slopes[0] = 1;
};
const roomy = { stepLimit: 10_000 };

describe('a journey', () => {
  it.each([1e-4, 1e-6, 1e-8, 1e-10, 1e-12])('is as accurate as its tolerance %f', (tolerance) => {
    const y = Float64Array.of(1);
    integratorOf(grows, 1, tolerance).advance(0, y, 2, roomy);
    expect(Math.abs(y[0]! / Math.exp(2) - 1)).toBeLessThan(20 * tolerance);
  });

  it.each([
    [-1, 0],
    [0, 1e-9],
    [-3, -1e-7],
    [1e6, 1e6 + 1],
  ])('from %f ends at %f exactly', (from, to) => {
    const y = Float64Array.of(0);
    expect(integratorOf(steady).advance(from, y, to, roomy)).toEqual({ reason: 'end', x: to });
    expect(y[0]).toBeCloseTo(to - from, 9);
  });

  it('needs no more calls of the derivative than the method is worth', () => {
    const integrator = integratorOf(grows);
    integrator.advance(0, Float64Array.of(1), 2, roomy);
    expect(integrator.counters.derivativeCalls).toBeLessThan(400);
  });

  it('ignores a component of infinite tolerance in the choice of its steps', () => {
    const stepsWith = (rough: number): number => {
      const integrator = odexIntegrator(
        {
          dimension: 2,
          derivative: (x, y, slopes) => {
            slopes[0] = y[0]!;
            slopes[1] = Math.sin(1e3 * x);
          },
        },
        { relative: 1e-9, absolute: Float64Array.of(1e-9, rough) },
      );
      integrator.advance(0, Float64Array.of(1, 0), 1, roomy);
      return integrator.counters.acceptedSteps;
    };
    expect(5 * stepsWith(Infinity)).toBeLessThan(stepsWith(1e-9));
  });
});

describe('a slope that is not a number', () => {
  const breaksAt =
    (place: number): Derivative =>
    (x, _y, slopes) => {
      slopes[0] = 1;
      slopes[1] = x > place ? NaN : 0;
    };

  it('ends the journey and names the component', () => {
    const y = Float64Array.of(0, 0);
    const arrival = integratorOf(breaksAt(-1), 2).advance(0, y, 1, roomy);
    expect(arrival).toEqual({ reason: 'non-finite', x: 0, component: 1 });
    expect([...y]).toEqual([0, 0]);
  });

  it('leaves the last good state, and says where it is', () => {
    const y = Float64Array.of(0, 0);
    const arrival = integratorOf(breaksAt(0.5), 2).advance(0, y, 1, roomy);
    expect(arrival.reason).toBe('non-finite');
    expect(y[0]).toBeLessThanOrEqual(0.5);
    expect(arrival.x).toBeCloseTo(y[0]!, 12);
  });

  it('may be infinite too', () => {
    const infinite: Derivative = (_x, _y, slopes) => {
      slopes[0] = Infinity;
    };
    expect(integratorOf(infinite).advance(0, Float64Array.of(0), 1, roomy).reason).toBe('non-finite');
  });

  it('does no harm to the next journey', () => {
    let place = 0.5;
    const integrator = integratorOf((x, y, slopes) => {
      breaksAt(place)(x, y, slopes);
    }, 2);
    integrator.advance(0, Float64Array.of(0, 0), 1, roomy);
    place = Infinity;
    const y = Float64Array.of(0, 0);
    expect(integrator.advance(0, y, 1, roomy)).toEqual({ reason: 'end', x: 1 });
    expect(y[0]).toBeCloseTo(1, 12);
  });

  it('an error of another kind passes through', () => {
    const fails = (): never => {
      throw new Error('a mistake of ours');
    };
    expect(() => integratorOf(fails).advance(0, Float64Array.of(0), 1, roomy)).toThrow('a mistake of ours');
  });
});

describe('the step limit', () => {
  const swings: Derivative = (_x, y, slopes) => {
    slopes[0] = y[1]!;
    slopes[1] = -1e4 * y[0]!;
  };

  it('ends a journey that needs more, at the last step', () => {
    const y = Float64Array.of(1, 0);
    const integrator = integratorOf(swings, 2);
    const arrival = integrator.advance(0, y, 10, { stepLimit: 7 });
    expect(arrival.reason).toBe('step-limit');
    expect(arrival.x).toBeGreaterThan(0);
    expect(arrival.x).toBeLessThan(1);
    expect(integrator.counters.acceptedSteps).toBe(7);
    expect(y[0]).toBeCloseTo(Math.cos(100 * arrival.x), 6);
  });

  it('does not spoil an arrival with its last step', () => {
    const integrator = integratorOf(steady);
    integrator.advance(0, Float64Array.of(0), 1, roomy);
    const needed = integrator.counters.acceptedSteps;
    const again = integratorOf(steady).advance(0, Float64Array.of(0), 1, { stepLimit: needed });
    expect(again).toEqual({ reason: 'end', x: 1 });
  });

  it('counts steps and calls over all journeys', () => {
    const integrator = integratorOf(grows);
    integrator.advance(0, Float64Array.of(1), 1, roomy);
    const { acceptedSteps, derivativeCalls } = integrator.counters;
    integrator.advance(1, Float64Array.of(1), 2, roomy);
    expect(integrator.counters.acceptedSteps).toBe(2 * acceptedSteps);
    expect(integrator.counters.derivativeCalls).toBe(2 * derivativeCalls);
  });
});

describe('an accepted step', () => {
  it('follows the one before without a gap, and interpolates as well as it steps', () => {
    const ends: number[] = [];
    const errors: number[] = [];
    const onStep = (step: AcceptedStep): void => {
      expect(step.from).toBe(ends.at(-1) ?? -1);
      ends.push(step.to);
      const out = new Float64Array(1);
      for (const share of [0, 0.2, 0.5, 0.9, 1]) {
        const x = step.from + share * (step.to - step.from);
        step.interpolate(x, out);
        expect(out[0]).toBe(step.component(0, x));
        errors.push(Math.abs(out[0]! / Math.exp(x + 1) - 1));
      }
    };
    integratorOf(grows).advance(-1, Float64Array.of(1), 1, { ...roomy, onStep });
    expect(ends.at(-1)).toBeCloseTo(1, 12);
    expect(Math.max(...errors)).toBeLessThan(1e-7);
  });

  it('is cut short at an event, and the state is the one there', () => {
    const stops = { value: (x: number): number => 0.3 - x };
    const y = Float64Array.of(1);
    let last = NaN;
    const arrival = integratorOf(grows).advance(0, y, 1, {
      ...roomy,
      events: [stops],
      onStep: (step) => {
        last = step.to;
      },
    });
    expect(arrival).toMatchObject({ reason: 'event', event: 0 });
    expect(arrival.x).toBeCloseTo(0.3, 14);
    expect(last).toBe(arrival.x);
    expect(y[0]).toBeCloseTo(Math.exp(0.3), 8);
  });

  // Left to the interpolation, the last three places are missed by 1.4e-6 and more.
  it.each([1.44, 1.6, 1.76, 1.92])('is made again to end at an event amid it: at %f', (place) => {
    const y = Float64Array.of(1);
    const passes = { value: (_x: number, read: ComponentReader): number => Math.exp(place) - read(0) };
    const { x } = integratorOf(grows, 1, 1e-5).advance(0, y, 3, { ...roomy, events: [passes] });
    expect(Math.abs(x - place)).toBeLessThan(2e-7);
    expect(Math.abs(y[0]! / Math.exp(x) - 1)).toBeLessThan(2e-7);
  });
});
