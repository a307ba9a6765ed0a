/**
 * The Rosenbrock method behind our contract: for stiff stretches, and not far behind an explicit method on smooth ones.
 *
 * A step that misses its tolerance, or meets a slope that is not finite, is tried again shorter. The length last found
 * right is where the next journey begins, so that many short journeys cost little more than one long one.
 */
import { firstEvent, type FoundEvent } from './events.ts';
import type {
  AcceptedStep,
  Arrival,
  EventFunction,
  Integrator,
  Journey,
  OdeProblem,
  Tolerances,
} from './integrator.ts';
import { rosenbrockStep, type RosenbrockStep } from './rosenbrock-step.ts';

/** The error goes with the fourth power of the length; the next step aims at a little less than is allowed. */
const AIM = 0.9;
const LEAST_FACTOR = 0.2;
const MOST_FACTOR = 5;

/** Shortening after a step that could not be made at all. */
const RETREAT = 0.25;

/** A step is made this much longer if that spares a tiny last one. */
const STRETCH = 1.01;

/** A step shorter than this share of what is left, or of x, no longer leads anywhere. */
const SHORTEST = Number.EPSILON;

/** A step that ends this much behind an event is exact enough at the event itself. */
const JUST_BEHIND = 1.001;

export interface RosenbrockIntegrator extends Integrator {
  readonly counters: Integrator['counters'] & { rejectedSteps: number };
}

const lengthFactor = (error: number): number =>
  Number.isNaN(error) ? RETREAT : Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, AIM * error ** -0.25));

export function rosenbrockIntegrator(problem: OdeProblem, tolerances: Tolerances): RosenbrockIntegrator {
  const method = rosenbrockStep(problem, tolerances);
  const step = stepView(method, problem.dimension);
  const counters = { derivativeCalls: 0, acceptedSteps: 0, rejectedSteps: 0 };
  let proposed = NaN;
  let triesLeft = 0;

  /** Tries ever shorter steps from where the method has begun: the length that was good, or why there is none. */
  const findStep = (x: number, left: number): number | Arrival => {
    if (Number.isNaN(proposed)) proposed = method.firstLength();
    while (triesLeft > 0) {
      triesLeft -= 1;
      const length = proposed * STRETCH >= left ? left : proposed;
      const error = method.attempt(length);
      proposed = length * lengthFactor(error);
      if (error <= 1) return length;
      counters.rejectedSteps += 1;
      if (proposed < SHORTEST * Math.max(left, Math.abs(x))) break;
    }
    const { culprit } = method;
    return culprit < 0 || triesLeft === 0
      ? { reason: 'step-limit', x }
      : { reason: 'non-finite', x, component: culprit };
  };

  /**
   * The first event of the step. Places within a step are not as good as its end, so the step is made again to end just
   * behind; should the event not show in that one, it will in the next.
   */
  const findEvent = (events: readonly EventFunction[]): FoundEvent | undefined => {
    const found = firstEvent(step, events);
    if (!found) return undefined;
    const length = step.to - step.from;
    const shorter = (found.x - step.from) * JUST_BEHIND;
    if (shorter >= length) return found;
    if (method.attempt(shorter) <= 1) {
      step.accept(step.from, step.from + shorter);
      return firstEvent(step, events);
    }
    method.attempt(length);
    return found;
  };

  const travel = (x: number, y: Float64Array, xEnd: number, { events, onStep }: Journey): Arrival => {
    for (let from = x; ; from = step.to) {
      const left = xEnd - from;
      const likely = proposed < left ? proposed : left;
      if (!method.begin(from, y, likely)) return { reason: 'non-finite', x: from, component: method.culprit };
      const length = findStep(from, left);
      if (typeof length === 'object') return length;
      counters.acceptedSteps += 1;
      step.accept(from, length === left ? xEnd : from + length);
      const found = events && findEvent(events);
      if (found) step.to = found.x;
      onStep?.(step);
      step.interpolate(step.to, y);
      if (found) return { reason: 'event', ...found };
      if (step.to === xEnd) return { reason: 'end', x: xEnd };
    }
  };

  return {
    counters,
    advance(x, y, xEnd, journey) {
      triesLeft = journey.stepLimit;
      const arrival = travel(x, y, xEnd, journey);
      counters.derivativeCalls = method.derivativeCalls;
      return arrival;
    },
  };
}

interface StepView extends AcceptedStep {
  to: number;
  /** Takes over the last attempt as a step between two places. */
  accept(from: number, to: number): void;
}

/** The one accepted step there is at a time. Its far end is kept, as nearly everybody asks about it. */
function stepView(method: RosenbrockStep, dimension: number): StepView {
  const end = new Float64Array(dimension);
  let farEnd = 0;
  const view = {
    from: 0,
    to: 0,
    accept: (from: number, to: number): void => {
      method.end(end);
      farEnd = to;
      view.from = from;
      view.to = to;
    },
    component: (index: number, x: number): number => {
      if (x >= farEnd) return end[index]!;
      return method.component(index, Math.max(0, (x - view.from) / (farEnd - view.from)));
    },
    interpolate: (x: number, out: Float64Array): void => {
      for (let i = 0; i < dimension; i += 1) out[i] = view.component(i, x);
    },
  };
  return view;
}
