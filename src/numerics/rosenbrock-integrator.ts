/**
 * The Rosenbrock method behind our contract: for stiff stretches, and not far behind an explicit method on smooth ones.
 *
 * A step that misses its tolerance, or meets a slope that is not finite, is tried again shorter. The length last found
 * right is where the next journey begins, so that many short journeys cost little more than one long one; journeys that
 * say that they begin alike begin with the length that was right for the last of their like.
 */
import { ChoosingStep } from './choosing-step.ts';
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
import { RosenbrockStep } from './rosenbrock-step.ts';

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

const lengthFactor = (error: number): number =>
  Number.isNaN(error)
    ? RETREAT
    : Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, AIM / Math.sqrt(Math.sqrt(error))));

/** The one accepted step there is at a time. Its far end is kept, as nearly everybody asks about it. */
class StepView implements AcceptedStep {
  from = 0;
  to = 0;
  private readonly method: RosenbrockStep;
  private readonly end: Float64Array;
  private farEnd = 0;

  constructor(method: RosenbrockStep, dimension: number) {
    this.method = method;
    this.end = new Float64Array(dimension);
  }

  /** Takes over the last attempt as a step between two places. */
  accept(from: number, to: number): void {
    this.method.end(this.end);
    this.farEnd = to;
    this.from = from;
    this.to = to;
  }

  component(index: number, x: number): number {
    if (x >= this.farEnd) return this.end[index]!;
    return this.method.component(index, Math.max(0, (x - this.from) / (this.farEnd - this.from)));
  }

  interpolate(x: number, out: Float64Array): void {
    for (let i = 0; i < this.end.length; i += 1) out[i] = this.component(i, x);
  }

  startJacobian(out: Float64Array): void {
    this.method.startJacobian(out);
  }
}

/** A class, so that code compiled for one problem serves for the next. */
export class RosenbrockIntegrator implements Integrator {
  readonly counters = { derivativeCalls: 0, acceptedSteps: 0, rejectedSteps: 0 };
  private readonly method: RosenbrockStep;
  private readonly step: StepView;
  /** The right length at the beginning of journeys, by their likeness. */
  private readonly beginnings = new Map<number, number>();
  private proposed = NaN;
  private triesLeft = 0;

  constructor(problem: OdeProblem, tolerances: Tolerances) {
    this.method = problem.choices
      ? new ChoosingStep(problem, problem.choices, tolerances)
      : new RosenbrockStep(problem, tolerances);
    this.step = new StepView(this.method, problem.dimension);
  }

  advance(x: number, y: Float64Array, xEnd: number, journey: Journey): Arrival {
    const { likeness } = journey;
    this.triesLeft = journey.stepLimit;
    if (likeness !== undefined) this.proposed = this.beginnings.get(likeness) ?? this.proposed;
    const arrival = this.travel(x, y, xEnd, journey);
    this.method.finish();
    this.counters.derivativeCalls = this.method.derivativeCalls;
    return arrival;
  }

  private travel(x: number, y: Float64Array, xEnd: number, journey: Journey): Arrival {
    const { method, step, counters } = this;
    const { events, onStep, likeness } = journey;
    for (let from = x; ; from = step.to) {
      const left = xEnd - from;
      if (!method.begin(from, y, this.proposed < left ? this.proposed : left))
        return { reason: 'non-finite', x: from, component: method.culprit };
      const length = this.findStep(from, left);
      if (Number.isNaN(length)) return this.failure(from);
      if (likeness !== undefined && from === x) this.beginnings.set(likeness, this.proposed);
      counters.acceptedSteps += 1;
      step.accept(from, length === left ? xEnd : from + length);
      const found = events && this.findEvent(events);
      if (found) step.to = found.x;
      onStep?.(step);
      step.interpolate(step.to, y);
      if (found) return { reason: 'event', ...found };
      if (step.to === xEnd) return { reason: 'end', x: xEnd };
    }
  }

  /** Tries ever shorter steps from where the method has begun: the length that was good, or NaN. */
  private findStep(x: number, left: number): number {
    const { method, counters } = this;
    if (Number.isNaN(this.proposed)) this.proposed = method.firstLength();
    let interrupted = 0;
    while (this.triesLeft > 0) {
      this.triesLeft -= 1;
      const length = this.proposed * STRETCH >= left ? left : this.proposed;
      const error = method.attempt(length);
      this.proposed = length * lengthFactor(error);
      if (error <= 1) {
        // Behind a change it goes on as before.
        this.proposed = Math.max(this.proposed, interrupted);
        return length;
      }
      const toChange = method.lengthToChange();
      if (toChange > 0) {
        this.proposed = toChange;
        interrupted = Math.max(interrupted, length);
      }
      counters.rejectedSteps += 1;
      if (this.proposed < SHORTEST * Math.max(left, Math.abs(x))) break;
    }
    return NaN;
  }

  private failure(x: number): Arrival {
    const { culprit } = this.method;
    return culprit < 0 || this.triesLeft === 0
      ? { reason: 'step-limit', x }
      : { reason: 'non-finite', x, component: culprit };
  }

  /**
   * The first event of the step. Places within a step are not as good as its end, so the step is made again to end just
   * behind; should the event not show in that one, it will in the next.
   */
  private findEvent(events: readonly EventFunction[]): FoundEvent | undefined {
    const { method, step } = this;
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
  }
}
