/**
 * The extrapolation method of the odex package behind our contract: for smooth, non-stiff stretches.
 *
 * The package accepts a step whose derivative is not finite, cannot end at x = 0, never resets its counters and, after a
 * rejected last step, may go on with a step size it never set; all four are dealt with here, so that nobody else needs to
 * know.
 */
import type { SolutionSegment } from 'odex';
import { firstEvent } from './events.ts';
import type { AcceptedStep, Arrival, Integrator, Journey, OdeProblem, Tolerances } from './integrator.ts';
import { SteadyOdex } from './steady-odex.ts';

/** Thrown inside the solver to get out of it, and caught right here. */
class NonFiniteSlope extends Error {
  readonly component: number;
  constructor(component: number) {
    super('non-finite slope');
    this.component = component;
  }
}

/** Steps of one journey are counted by us; the package's own limit must never come first. */
const NO_LIMIT = 1e9;

export function odexIntegrator(problem: OdeProblem, tolerances: Tolerances): Integrator {
  const n = problem.dimension;
  const state = new Float64Array(n);
  const slopes = new Float64Array(n);
  const counters = { derivativeCalls: 0, acceptedSteps: 0 };
  // The solver counts from 0 up; `origin` is where that 0 lies, so that no journey ends at the forbidden x = 0.
  let origin = 0;

  const derivative = (x: number, y: readonly number[], out: number[]): void => {
    counters.derivativeCalls += 1;
    for (let i = 0; i < n; i += 1) state[i] = y[i]!;
    problem.derivative(origin + x, state, slopes);
    for (let i = 0; i < n; i += 1) {
      const slope = slopes[i]!;
      if (!Number.isFinite(slope)) throw new NonFiniteSlope(i);
      out[i] = slope;
    }
  };
  const solver = new SteadyOdex(derivative, n, {
    rawFunction: true,
    denseOutput: true,
    relativeTolerance: tolerances.relative,
    absoluteTolerance: Array.from(tolerances.absolute, (value) => Math.min(value, Number.MAX_VALUE / 1e10)),
    maxSteps: NO_LIMIT,
  });
  // A step rejected close to the end makes the package read sizes it never set; no limit is the right reading.
  solver.hh.fill(Infinity);

  /** Where the state stands: the end of the last step that was handed over. */
  let reached = 0;

  const travel = (y: Float64Array, length: number, journey: Journey): Arrival => {
    reached = origin;
    let steps = 0;
    for (const segment of solver.solutionSegments(0, Array.from(y), length)) {
      counters.acceptedSteps += 1;
      steps += 1;
      const step = acceptedStep(segment, origin, n);
      const found = journey.events && firstEvent(step, journey.events);
      journey.onStep?.(found ? { ...step, to: found.x } : step);
      if (found) {
        step.interpolate(found.x, y);
        return { reason: 'event', ...found };
      }
      for (let i = 0; i < n; i += 1) y[i] = segment.y[i]!;
      reached = step.to;
      if (steps >= journey.stepLimit && segment.x1 < length) return { reason: 'step-limit', x: reached };
    }
    return { reason: 'end', x: reached };
  };

  return {
    counters,
    advance(x, y, xEnd, journey) {
      origin = x;
      try {
        const arrival = travel(y, xEnd - x, journey);
        return arrival.reason === 'end' ? { reason: 'end', x: xEnd } : arrival;
      } catch (error) {
        if (error instanceof NonFiniteSlope)
          return { reason: 'non-finite', x: reached, component: error.component };
        throw error;
      }
    },
  };
}

function acceptedStep(segment: SolutionSegment, origin: number, n: number): AcceptedStep {
  const component = (index: number, x: number): number =>
    segment.f(index, Math.min(segment.x1, Math.max(segment.x0, x - origin)));
  return {
    from: origin + segment.x0,
    to: origin + segment.x1,
    component,
    interpolate: (x, out) => {
      for (let i = 0; i < n; i += 1) out[i] = component(i, x);
    },
  };
}
