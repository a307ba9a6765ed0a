/**
 * The extrapolation method of the odex package behind our contract: for smooth, non-stiff stretches.
 *
 * The package accepts a step whose derivative is not finite, cannot end at x = 0, never resets its counters and, after a
 * rejected last step, may go on with a step size it never set; all four are dealt with here, so that nobody else needs to
 * know.
 */
import { Solver, type Acceptance, type SolutionSegment } from 'odex';
import { pow } from './elementary/power.ts';
import { firstEvent } from './events.ts';
import type { AcceptedStep, Arrival, Integrator, Journey, OdeProblem, Tolerances } from './integrator.ts';

/** The largest part of the step before that a step may lose or gain by its interpolation. */
const LEAST_ROOT = 0.01;

/**
 * The solver of the odex package with its step sizes reckoned alike on every machine.
 *
 * Two of its formulas raise an error to a fraction of one by `Math.pow`, whose last bit differs from engine to engine and moves
 * the ends of all later steps. Both results are overwritten here from the numbers they came from: after a line of the
 * extrapolation table, with err its error and nⱼ the intervals of line j,
 *
 *   step = |h| / min(s₂/f, max(f, (err/s₁)^(1/(2j+1))/σ)),   f = F₁^(1/(2j+1)),   work = aⱼ/step
 *
 * and after the interpolation of a step, step = h / max(errint^(1/(k+4)), 0.01) with errint the root mean square of its last
 * coefficient. What else the package raises are squares and whole powers of odd numbers up to 17, which V8 reckons exactly;
 * the logarithm of the tolerance only chooses a whole number, and powers of ten lie far from its borders.
 */
class SteadyOdex extends Solver {
  override midEx(j: number, h: number, x: number, y: number[], slopes: number[]): boolean {
    const stable = super.midEx(j, h, x, y, slopes);
    if (stable && j > 0) {
      const { stepSizeFac1, stepSizeFac2, stepSafetyFactor1, stepSafetyFactor2 } = this.options;
      const exponent = 1 / (2 * j + 1);
      const least = pow(stepSizeFac1, exponent);
      const wanted = pow(this.err / stepSafetyFactor1, exponent) / stepSafetyFactor2;
      const factor = 1 / Math.min(stepSizeFac2 / least, Math.max(least, wanted));
      this.hh[j] = Math.min(Math.abs(h) * factor, this.hMax);
      this.w[j] = this.a[j]! / this.hh[j];
    }
    return stable;
  }

  override acceptStep(kc: number, h: number, x: number, y: number[], dz: number[]): Acceptance {
    const acceptance = super.acceptStep(kc, h, x, y, dz);
    if (acceptance.hoptde !== undefined)
      acceptance.hoptde = h / Math.max(this.interpolationRoot(kc), LEAST_ROOT);
    return acceptance;
  }

  /** The error of the interpolation, to the power at which a step follows it. */
  private interpolationRoot(kc: number): number {
    const { interpolationFormulaDegree, denseComponents } = this.options;
    const degree = 2 * kc - interpolationFormulaDegree + 1;
    const count = denseComponents.length;
    let sum = 0;
    for (let i = 0; i < count; i += 1) {
      const share = this.dens[(degree + 4) * count + i]! / this.scal[denseComponents[i]!]!;
      sum += share * share;
    }
    return pow(Math.sqrt(sum / count) * this.errfac[degree - 1]!, 1 / (degree + 4));
  }
}

/** Thrown inside the solver to get out of it, and caught right here. */
class NonFiniteSlope extends Error {
  readonly component: number;
  constructor(component: number) {
    super('non-finite slope');
    this.component = component;
  }
}

/** The package's own first step, of a journey of which nothing is known yet. */
const FIRST_STEP = 1e-4;

/** A step that is to meet an event goes this much beyond it. */
const JUST_BEHIND = 1.001;

/** So close to the end of a step, as a share of it, a place within the step is as good as the end. */
const NEARLY = 0.01;

/** An event that keeps away from steps made for it hangs on roundings; then it may lie anywhere. */
const MOST_TRIES = 3;

/** An event within a step, whose place is only as good as the interpolation. */
interface Sighting {
  readonly reason: 'in sight';
  readonly x: number;
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
  let stepsLeft = 0;

  /** From where the state stands towards a goal, or only until an event is in sight amid a step. */
  const travel = (y: Float64Array, goal: number, closely: boolean, journey: Journey): Arrival | Sighting => {
    origin = reached;
    const length = goal - origin;
    for (const segment of solver.solutionSegments(0, Array.from(y), length)) {
      stepsLeft -= 1;
      const step = acceptedStep(segment, origin, y);
      const found = journey.events && firstEvent(step, journey.events);
      if (found && closely && isAmid(step, found.x)) return { reason: 'in sight', x: found.x };
      counters.acceptedSteps += 1;
      journey.onStep?.(found ? { ...step, to: found.x } : step);
      if (found) {
        step.interpolate(found.x, y);
        return { reason: 'event', ...found };
      }
      for (let i = 0; i < n; i += 1) y[i] = segment.y[i]!;
      reached = step.to;
      if (stepsLeft <= 0 && segment.x1 < length) return { reason: 'step-limit', x: reached };
    }
    reached = goal;
    return { reason: 'end', x: goal };
  };

  /**
   * Places amid a step are not as good as its end. So a step that has an event in sight is made again, to end just behind
   * the event; should it not show in that one, it will in the next.
   */
  const journeyTo = (y: Float64Array, xEnd: number, journey: Journey): Arrival => {
    let tries = 0;
    const towards = (goal: number, firstStep: number): Arrival | Sighting => {
      solver.options.initialStepSize = firstStep;
      return travel(y, goal, tries < MOST_TRIES, journey);
    };
    let arrival = towards(xEnd, FIRST_STEP);
    for (;;) {
      if (arrival.reason === 'in sight') {
        tries += 1;
        const length = (arrival.x - reached) * JUST_BEHIND;
        arrival = towards(Math.min(reached + length, xEnd), length);
      } else if (arrival.reason === 'end' && arrival.x < xEnd) {
        if (stepsLeft <= 0) return { reason: 'step-limit', x: reached };
        arrival = towards(xEnd, FIRST_STEP);
      } else return arrival;
    }
  };

  return {
    counters,
    advance(x, y, xEnd, journey) {
      reached = x;
      stepsLeft = journey.stepLimit;
      try {
        return journeyTo(y, xEnd, journey);
      } catch (error) {
        if (error instanceof NonFiniteSlope)
          return { reason: 'non-finite', x: reached, component: error.component };
        throw error;
      }
    },
  };
}

const isAmid = ({ from, to }: AcceptedStep, x: number): boolean => to - x > NEARLY * (to - from);

/**
 * At its ends a step is what it came from and what it came to, to the last digit: an event that its interpolation put a
 * rounding beyond the end would be seen neither there nor by the next step, which begins behind it.
 */
function acceptedStep(segment: SolutionSegment, origin: number, start: Float64Array): AcceptedStep {
  const from = origin + segment.x0;
  const to = origin + segment.x1;
  const component = (index: number, x: number): number => {
    if (x >= to) return segment.y[index]!;
    return x <= from ? start[index]! : segment.f(index, x - origin);
  };
  return {
    from,
    to,
    component,
    interpolate: (x, out) => {
      for (let i = 0; i < out.length; i += 1) out[i] = component(i, x);
    },
  };
}
