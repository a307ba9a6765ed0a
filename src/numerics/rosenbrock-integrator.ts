/**
 * The Rosenbrock method behind our contract: for stiff stretches, and not far behind an explicit method on smooth ones.
 *
 * The kernel goes from step to step, src/kernel/journey.ts, and comes here only for those that somebody wants to see. The
 * length last found right is where the next journey begins, so that many short journeys cost little more than one long one;
 * journeys that say that they begin alike begin with the length that was right for the last of their like.
 */
import * as header from '../kernel/step-header.ts';
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

/** A step that ends this much behind an event is exact enough at the event itself. */
const JUST_BEHIND = 1.001;

const NOBODY_LOOKS = { component: 0, value: -Infinity };
const ALL_ARE_SHOWN = { component: 0, value: NaN };

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
}

/** A class, so that code compiled for one problem serves for the next. */
export class RosenbrockIntegrator implements Integrator {
  readonly counters = { derivativeCalls: 0, acceptedSteps: 0, rejectedSteps: 0 };
  private readonly method: RosenbrockStep;
  private readonly step: StepView;
  /** The right length at the beginning of journeys, by their likeness. */
  private readonly beginnings = new Map<number, number>();
  private proposed = NaN;

  constructor(problem: OdeProblem, tolerances: Tolerances) {
    this.method = problem.choices
      ? new ChoosingStep(problem, problem.choices, tolerances)
      : new RosenbrockStep(problem, tolerances);
    this.step = new StepView(this.method, problem.dimension);
  }

  advance(x: number, y: Float64Array, xEnd: number, journey: Journey): Arrival {
    const { method, counters } = this;
    const { events, onStep, likeness, calmAbove, tangent } = journey;
    if (likeness !== undefined) this.proposed = this.beginnings.get(likeness) ?? this.proposed;
    let found: FoundEvent | undefined;
    const outcome = method.travel(x, y, xEnd, {
      triesLeft: journey.stepLimit,
      proposed: this.proposed,
      calm: events || onStep ? (calmAbove ?? ALL_ARE_SHOWN) : NOBODY_LOOKS,
      tangent,
      show: () => {
        found = this.look(journey, y);
        return found !== undefined;
      },
    });
    this.proposed = method.number(header.PROPOSED);
    const steps = method.number(header.ACCEPTED);
    counters.acceptedSteps += steps;
    counters.rejectedSteps += method.number(header.REJECTED);
    if (likeness !== undefined && steps > 0) this.beginnings.set(likeness, method.number(header.BEGINNING));
    const place = method.number(header.STEP_TO);
    method.finish();
    counters.derivativeCalls = method.derivativeCalls;
    return this.arrival(outcome, place, found);
  }

  private arrival(outcome: number, x: number, found: FoundEvent | undefined): Arrival {
    if (found) return { reason: 'event', ...found };
    if (outcome === header.ARRIVED) return { reason: 'end', x };
    if (outcome === header.OUT_OF_STEPS) return { reason: 'step-limit', x };
    return { reason: 'non-finite', x, component: this.method.culprit };
  }

  /** Shows the step that was just accepted; the event in it, if any. */
  private look({ events, onStep }: Journey, y: Float64Array): FoundEvent | undefined {
    const { method, step } = this;
    step.accept(method.number(header.STEP_X), method.number(header.STEP_TO));
    const found = events && this.findEvent(events);
    if (found) step.to = found.x;
    onStep?.(step);
    step.interpolate(step.to, y);
    method.endAt(step.to, y);
    return found;
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
