/** The stiff integrator: its order, what stiffness costs it, and how its journeys end. */
import { describe, expect, it } from 'vitest';
import type { AcceptedStep, OdeProblem, Tolerances } from '../../../src/numerics/integrator.ts';
import { RosenbrockIntegrator } from '../../../src/numerics/rosenbrock-integrator.ts';
import { RosenbrockStep } from '../../../src/numerics/rosenbrock-step.ts';

const roomy = { stepLimit: 100_000 };

const alike = (problem: OdeProblem, tolerance: number): Tolerances => ({
  relative: tolerance,
  absolute: new Float64Array(problem.dimension).fill(tolerance),
});
const integratorOf = (problem: OdeProblem, tolerance = 1e-6): RosenbrockIntegrator =>
  new RosenbrockIntegrator(problem, alike(problem, tolerance));

/** y = exp(sin x), and the total of its slope. */
const wave: OdeProblem = {
  dimension: 2,
  coupled: [0],
  derivative: (x, y, slopes) => {
    slopes[0] = y[0]! * Math.cos(x);
    slopes[1] = slopes[0];
  },
};
const waveAt = (x: number): number => Math.exp(Math.sin(x));

const vanDerPol: OdeProblem = {
  dimension: 2,
  autonomous: true,
  derivative: (_x, y, slopes) => {
    slopes[0] = y[1]!;
    slopes[1] = 100 * (1 - y[0]! ** 2) * y[1]! - y[0]!;
  },
};

const robertson: OdeProblem = {
  dimension: 3,
  autonomous: true,
  derivative: (_x, y, slopes) => {
    const slow = 0.04 * y[0]!;
    const fast = 1e4 * y[1]! * y[2]!;
    const pair = 3e7 * y[1]! ** 2;
    slopes.set([fast - slow, slow - fast - pair, pair]);
  },
};

const steady: OdeProblem = {
  dimension: 1,
  derivative: (_x, _y, slopes) => {
    slopes[0] = 1;
  },
};

describe('steps of equal length', () => {
  interface Errors {
    readonly end: number;
    readonly within: number;
  }

  /** Largest errors of the wave and its total over four units of x, at the ends of steps and between. */
  function errorsOf(steps: number): Errors {
    const h = 4 / steps;
    const step = new RosenbrockStep(wave, alike(wave, 1));
    const y = Float64Array.of(1, 0);
    const errors = { end: 0, within: 0 };
    for (let i = 0; i < steps; i += 1) {
      step.begin(i * h, y, h);
      step.attempt(h);
      const errorAt = (share: number): number => {
        const exact = waveAt((i + share) * h);
        return Math.max(
          Math.abs(step.component(0, share) - exact),
          Math.abs(step.component(1, share) - (exact - 1)),
        );
      };
      errors.within = Math.max(errors.within, errorAt(0.2), errorAt(0.5), errorAt(0.9));
      errors.end = Math.max(errors.end, errorAt(1));
      step.end(y);
    }
    return errors;
  }

  it('are of order 4 at their ends and within', () => {
    const [coarse, fine] = [errorsOf(40), errorsOf(80)];
    expect(Math.log2(coarse.end / fine.end)).toBeGreaterThan(3.8);
    expect(Math.log2(coarse.within / fine.within)).toBeGreaterThan(3.8);
    expect(fine.end).toBeLessThan(1e-6);
  });

  it('judge their error by order 3', () => {
    const errorShare = (h: number): number => {
      const step = new RosenbrockStep(wave, alike(wave, 1));
      step.begin(1, Float64Array.of(waveAt(1), 0), h);
      return step.attempt(h);
    };
    expect(Math.log2(errorShare(0.02) / errorShare(0.01))).toBeCloseTo(4, 0);
  });

  it('follow a stiff pull without losing the course', () => {
    const pulled: OdeProblem = {
      dimension: 1,
      derivative: (x, y, slopes) => {
        slopes[0] = -1e6 * (y[0]! - Math.cos(x)) - Math.sin(x);
      },
    };
    const step = new RosenbrockStep(pulled, alike(pulled, 1));
    const y = Float64Array.of(1);
    for (let i = 0; i < 10; i += 1) {
      step.begin(i / 10, y, 0.1);
      step.attempt(0.1);
      step.end(y);
    }
    expect(Math.abs(y[0]! - Math.cos(1))).toBeLessThan(1e-7);
  });
});

describe('accuracy and price', () => {
  it.each([
    [1e-4, 1700, 3e-4],
    [1e-6, 4300, 5e-6],
    [1e-8, 13_500, 5e-8],
  ])('van der Pol, μ = 100, to %f within %i calls', (tolerance, mostCalls, error) => {
    // y(200) by two independent codes, derived: 1.718587204 (CVODE), 1.718587208 (SciPy Radau, 1e-12).
    const integrator = integratorOf(vanDerPol, tolerance);
    const y = Float64Array.of(2, 0);
    expect(integrator.advance(0, y, 200, roomy).reason).toBe('end');
    expect(Math.abs(y[0]! - 1.718587206)).toBeLessThan(error);
    expect(integrator.counters.derivativeCalls).toBeLessThan(mostCalls);
  });

  it.each([
    [40, [7.158270687194e-1, 9.185534764558e-6, 2.841637457458e-1], 800],
    [4e5, [4.938274521e-3, 1.98499408796e-8, 9.950617056291e-1], 1750],
  ])('Robertson to x = %f', (end, expected, mostCalls) => {
    // SciPy Radau at 1e-12 and 1e-11, derived.
    const integrator = new RosenbrockIntegrator(robertson, {
      relative: 1e-6,
      absolute: Float64Array.of(1e-6, 1e-12, 1e-6),
    });
    const y = Float64Array.of(1, 0, 0);
    integrator.advance(0, y, end, roomy);
    for (const [i, value] of expected.entries()) expect(Math.abs(y[i]! / value - 1)).toBeLessThan(5e-6);
    expect(integrator.counters.derivativeCalls).toBeLessThan(mostCalls);
  });

  it('a vessel that fills to equal pressure, where the root of the flow law is rounded', () => {
    const filling: OdeProblem = {
      dimension: 1,
      autonomous: true,
      derivative: (_x, y, slopes) => {
        const q = 1 - y[0]!;
        slopes[0] = (100 * q) / (q * q + 4e-8) ** 0.25;
      },
    };
    const integrator = integratorOf(filling);
    const y = Float64Array.of(0.2);
    integrator.advance(0, y, 1, roomy);
    expect(y[0]).toBeCloseTo(1, 8);
    expect(integrator.counters.derivativeCalls).toBeLessThan(400);
  });

  it('short journeys in a row, hardly dearer than one long one', () => {
    const callsIn = (journeys: number): number => {
      const integrator = integratorOf(wave);
      const y = Float64Array.of(1, 0);
      for (let i = 0; i < journeys; i += 1) integrator.advance(i / journeys, y, (i + 1) / journeys, roomy);
      expect(Math.abs(y[0]! / waveAt(1) - 1)).toBeLessThan(1e-5);
      return integrator.counters.derivativeCalls;
    };
    const longSteps = callsIn(1) / 8;
    // Eight calls a step: six stages, one for the component, one for x.
    expect(callsIn(Math.round(longSteps))).toBeLessThan(1.5 * 8 * longSteps);
  });

  it('counts every call of the derivative', () => {
    let calls = 0;
    const counted: OdeProblem = {
      ...wave,
      derivative: (x, y, slopes) => {
        calls += 1;
        wave.derivative(x, y, slopes);
      },
    };
    const integrator = integratorOf(counted);
    integrator.advance(0, Float64Array.of(1, 0), 1, roomy);
    expect(integrator.counters.derivativeCalls).toBe(calls);
  });
});

describe('components that only add up', () => {
  /** Three vessels in a row from supply to room; the flows into each, and out of the last, are totalled. */
  const vesselSlopes = (y: Float64Array, slopes: Float64Array): void => {
    let upstream = 4;
    for (let i = 0; i <= 3; i += 1) {
      const downstream = i < 3 ? y[i]! : 1;
      const q = upstream - downstream;
      const flow = (30 * q) / (q * q + 1e-6) ** 0.25;
      if (i > 0) slopes[i - 1]! -= flow;
      if (i < 3) slopes[i] = flow;
      slopes[3 + i] = flow;
      upstream = downstream;
    }
  };
  const vessels = (coupled: readonly number[]): OdeProblem => ({
    dimension: 7,
    autonomous: true,
    coupled,
    derivative: (_x, y, slopes) => {
      vesselSlopes(y, slopes);
    },
  });
  const tolerances = {
    relative: 1e-6,
    absolute: Float64Array.from([0, 1, 2, 3, 4, 5, 6], (i) => (i < 3 ? 1e-6 : Infinity)),
  };
  const run = (
    problem: OdeProblem,
  ): { readonly y: Float64Array; readonly counters: RosenbrockIntegrator['counters'] } => {
    const integrator = new RosenbrockIntegrator(problem, tolerances);
    const y = Float64Array.of(1, 1.5, 2, 0, 0, 0, 0);
    integrator.advance(0, y, 1, roomy);
    return { y, counters: integrator.counters };
  };
  const lean = run(vessels([0, 1, 2]));

  it('keep the sums that their slopes keep', () => {
    const { y } = lean;
    const begin = [1, 1.5, 2];
    for (let i = 0; i < 3; i += 1) {
      const kept = y[3 + i]! - y[4 + i]! - (y[i]! - begin[i]!);
      expect(Math.abs(kept)).toBeLessThan(1e-10 * y[3]!);
    }
  });

  it('come out as if they had been solved for', () => {
    const full = run(vessels([0, 1, 2, 3, 4, 5, 6]));
    for (const [i, value] of lean.y.entries()) expect(Math.abs(value / full.y[i]! - 1)).toBeLessThan(1e-8);
  });

  it('cost no calls of the derivative', () => {
    const { counters } = lean;
    // Six stages and three columns for a good step, five stages for one tried again.
    const { acceptedSteps, rejectedSteps, derivativeCalls } = counters;
    expect(derivativeCalls).toBe(9 * acceptedSteps + 5 * rejectedSteps);
  });

  it('steer the step all the same when they have a tolerance', () => {
    const ripple: OdeProblem = {
      dimension: 2,
      autonomous: true,
      coupled: [0],
      derivative: (_x, y, slopes) => {
        slopes[0] = 1;
        slopes[1] = Math.sin(50 * y[0]!);
      },
    };
    const errorWith = (absolute: number): number => {
      const y = Float64Array.of(0, 0);
      new RosenbrockIntegrator(ripple, { relative: 1e-9, absolute: Float64Array.of(1e-6, absolute) }).advance(
        0,
        y,
        2,
        roomy,
      );
      return Math.abs(y[1]! - (1 - Math.cos(100)) / 50);
    };
    expect(errorWith(Infinity)).toBeGreaterThan(1e-3);
    expect(errorWith(1e-8)).toBeLessThan(1e-6);
  });
});

describe('a journey', () => {
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

  it('hands over steps that join, and places within them', () => {
    const joints: number[] = [];
    const out = new Float64Array(2);
    const y = Float64Array.of(1, 0);
    const onStep = (step: AcceptedStep): void => {
      expect(step.from).toBe(joints.at(-1) ?? 0);
      joints.push(step.to);
      const middle = (step.from + step.to) / 2;
      step.interpolate(middle, out);
      expect(Math.abs(out[0]! - waveAt(middle))).toBeLessThan(1e-5);
      expect(Math.abs(out[1]! - (waveAt(middle) - 1))).toBeLessThan(1e-5);
      expect(step.component(0, middle)).toBe(out[0]);
    };
    integratorOf(wave).advance(0, y, 3, { ...roomy, onStep });
    expect(joints.at(-1)).toBe(3);
    expect(joints.length).toBeGreaterThan(4);
  });

  it('spends its limit of steps, and stands where it got', () => {
    const y = Float64Array.of(1, 0);
    const arrival = integratorOf(wave).advance(0, y, 1000, { stepLimit: 20 });
    expect(arrival.reason).toBe('step-limit');
    expect(arrival.x).toBeGreaterThan(0);
    expect(Math.abs(y[0]! - waveAt(arrival.x))).toBeLessThan(1e-4);
  });

  it('gives up where no step is short enough, in few tries', () => {
    const jumpy: OdeProblem = {
      dimension: 1,
      coupled: [],
      derivative: (x, _y, slopes) => {
        slopes[0] = x > 0.5 ? 1e300 : 0;
      },
    };
    const integrator = integratorOf(jumpy);
    const arrival = integrator.advance(0, Float64Array.of(0), 1, roomy);
    expect(arrival.reason).toBe('step-limit');
    expect(arrival.x).toBeCloseTo(0.5, 6);
    expect(integrator.counters.rejectedSteps).toBeLessThan(200);
  });
});

describe('a component that stands', () => {
  it('stands to the last bit, however hard it drives the others', () => {
    const driven: OdeProblem = {
      dimension: 3,
      autonomous: true,
      derivative: (_x, y, slopes) => {
        slopes.set([0, 1e7 * (Math.cos(y[0]!) - y[0]! - y[1]!), 1e3 * (y[1]! - 0.3 * y[0]! - y[2]!)]);
      },
    };
    const y = Float64Array.of(0, 0, 5);
    integratorOf(driven).advance(0, y, 1, roomy);
    expect(y[0]).toBe(0);
    expect(y[2]).toBeCloseTo(1, 6);
  });
});

describe('an event', () => {
  const half = { value: (_x: number, component: (i: number) => number): number => 0.5 - component(0) };
  const turning: OdeProblem = {
    dimension: 3,
    autonomous: true,
    coupled: [0, 1],
    derivative: (_x, y, slopes) => {
      slopes[0] = y[1]!;
      slopes[1] = -y[0]!;
      slopes[2] = y[1]!;
    },
  };

  it('is found where it happens, and the journey goes on from there', () => {
    const integrator = integratorOf(turning, 1e-9);
    const y = Float64Array.of(0, 1, 0);
    const reached: number[] = [];
    const arrival = integrator.advance(0, y, 3, {
      ...roomy,
      events: [half],
      onStep: (step) => {
        reached.push(step.to);
      },
    });
    expect(arrival).toEqual({ reason: 'event', event: 0, x: reached.at(-1) });
    expect(arrival.x).toBeCloseTo(Math.PI / 6, 7);
    for (const [i, value] of [0.5, Math.sqrt(0.75), 0.5].entries()) expect(y[i]).toBeCloseTo(value, 7);
    integrator.advance(arrival.x, y, 3, roomy);
    expect(y[0]).toBeCloseTo(Math.sin(3), 6);
    expect(y[2]).toBeCloseTo(Math.sin(3), 6);
  });

  it('is where it is to the accuracy of the steps, not of the places within them', () => {
    // A fall against a drag that grows with the square of the speed: v² = 1 − e^(−2 fall).
    const falling: OdeProblem = {
      dimension: 2,
      autonomous: true,
      derivative: (_x, y, slopes) => {
        slopes.set([-y[1]!, 1 - y[1]! ** 2]);
      },
    };
    const y = Float64Array.of(100, 0);
    const landed = { value: (_x: number, component: (i: number) => number): number => component(0) - 98.7 };
    integratorOf(falling, 1e-4).advance(0, y, 100, { ...roomy, events: [landed] });
    expect(Math.abs(y[1]! - Math.sqrt(1 - Math.exp(-2.6)))).toBeLessThan(1e-5);
  });

  it('stands as first seen when the step cannot be made again', () => {
    let passed = false;
    let broken = 0;
    const flaky: OdeProblem = {
      ...turning,
      derivative: (x, y, slopes) => {
        turning.derivative(x, y, slopes);
        if (passed && broken === 0) {
          broken += 1;
          slopes[0] = NaN;
        }
      },
    };
    const noticed = {
      value: (x: number, component: (i: number) => number): number => {
        const value = half.value(x, component);
        passed ||= value <= 0;
        return value;
      },
    };
    const y = Float64Array.of(0, 1, 0);
    const arrival = integratorOf(flaky, 1e-9).advance(0, y, 3, { ...roomy, events: [noticed] });
    expect(broken).toBe(1);
    expect(arrival.reason).toBe('event');
    expect(arrival.x).toBeCloseTo(Math.PI / 6, 6);
    expect(y[1]).toBeCloseTo(Math.sqrt(0.75), 6);
  });
});

describe('a slope that is not finite', () => {
  it.each([NaN, Infinity, -Infinity])('of %f at the start ends the journey there, by component', (slope) => {
    const broken: OdeProblem = {
      dimension: 2,
      derivative: (_x, _y, slopes) => {
        slopes.set([1, slope]);
      },
    };
    const y = Float64Array.of(3, 4);
    const arrival = integratorOf(broken).advance(7, y, 8, roomy);
    expect(arrival).toEqual({ reason: 'non-finite', x: 7, component: 1 });
    expect([...y]).toEqual([3, 4]);
  });

  it('of a component that only adds up ends the journey too', () => {
    const broken: OdeProblem = {
      dimension: 2,
      coupled: [0],
      derivative: (_x, y, slopes) => {
        slopes.set([1, 1 / (y[0]! > 0.25 ? 0 : 1)]);
      },
    };
    const arrival = integratorOf(broken).advance(0, Float64Array.of(0, 0), 1, roomy);
    expect(arrival).toMatchObject({ reason: 'non-finite', component: 1 });
  });

  const walled: OdeProblem = {
    dimension: 1,
    derivative: (_x, y, slopes) => {
      slopes[0] = y[0]! > 0.9 ? NaN : 1;
    },
  };

  it('is come up to, but not passed', () => {
    const y = Float64Array.of(0);
    const integrator = integratorOf(walled);
    const arrival = integrator.advance(0, y, 2, roomy);
    expect(arrival).toMatchObject({ reason: 'non-finite', component: 0 });
    expect(y[0]).toBeLessThanOrEqual(0.9);
    expect(y[0]).toBeCloseTo(0.9, 6);
    expect(integrator.counters.derivativeCalls).toBeLessThan(1000);
  });

  it('is not blamed when the limit of steps ends the journey first', () => {
    const journey = { stepLimit: 3 };
    expect(integratorOf(walled).advance(0.89, Float64Array.of(0.89), 2, journey).reason).toBe('step-limit');
  });

  // Nothing happens up to x = 5, so the step has grown long; then y drops to 1e-4 by a law with no sense below zero.
  const dropping = (x: number, y: Float64Array, slopes: Float64Array): void => {
    slopes[0] = x < 5 ? 0 : 1 - 100 * Math.sqrt(y[0]!);
  };

  it('in a trial that went too far makes the step shorter, no more', () => {
    const integrator = integratorOf({ dimension: 1, derivative: dropping }, 1e-8);
    const y = Float64Array.of(1);
    expect(integrator.advance(0, y, 10, roomy).reason).toBe('end');
    expect(y[0]).toBeCloseTo(1e-4, 9);
    const { rejectedSteps } = integrator.counters;
    expect(rejectedSteps).toBeGreaterThan(0);
    // A second journey adds to what the first has counted.
    integrator.advance(0, Float64Array.of(1), 10, roomy);
    expect(integrator.counters.rejectedSteps).toBeGreaterThan(rejectedSteps + 1);
  });

  it('that was overcome is not blamed for what comes later', () => {
    const jumpyLater: OdeProblem = {
      dimension: 1,
      derivative: (x, y, slopes) => {
        if (x < 7) dropping(x, y, slopes);
        else slopes[0] = x < 8 ? 0 : 1e300;
      },
    };
    const arrival = integratorOf(jumpyLater, 1e-8).advance(0, Float64Array.of(1), 10, roomy);
    expect(arrival.reason).toBe('step-limit');
    expect(arrival.x).toBeCloseTo(8, 5);
  });
});
