/**
 * A step of the Rosenbrock method for slopes with a choice in them, kept from its beginning to its end.
 *
 * Stages that fall on both sides of a kink cancel badly where the problem is stiff: each is far off, and only by the same
 * slope are they so to the same amount. With the choice kept all of them meet smooth slopes. What has to be made sure of is
 * that the choice is right.
 *
 * A state is off its balance by the error of the last step, and that can be enough to choose wrongly. So the choice goes by
 * the state that this one relaxes to: a small implicit step (I − εγhJ) u = εγh f leads there. At the end of a step a choice
 * that has become wrong is an error like any other: half of what it changes in the slopes there, times the length, as it
 * grew from nothing on the way. Is that too much, the step has to end where the choice changes.
 */
import * as header from '../kernel/step-header.ts';
import { square } from './elementary/whole-powers.ts';
import type { OdeProblem, StepChoices, Tolerances } from './integrator.ts';
import { doubles, kernel } from './kernel.ts';
import { GAMMA } from './rosenbrock-coefficients.ts';
import { RosenbrockStep } from './rosenbrock-step.ts';

/** ε: in so small a share of a step nothing moves far but what is stiff. */
const RELAXING = 1e-3;

/** Halvings by which the place is found where a choice becomes wrong. */
const BISECTIONS = 12;

/** The next try ends behind that place by this share of what was too much, and is shorter than the last one in any case. */
const OVERSHOOT = 0.5;
const SHORTER = 0.9;

export class ChoosingStep extends RosenbrockStep {
  private readonly choices: StepChoices;
  private readonly trial: Float64Array;
  private readonly relaxed: Float64Array;
  private readonly slopesThere: Float64Array;
  private readonly others: Float64Array;
  /** As a share of the tolerance, what the choice was wrong by at the end of the last attempt. */
  private staleness = 0;
  /** True when the choice kept in the last attempt is not the one for the next step. */
  private isStale = false;
  private hasChosen = false;

  constructor(problem: OdeProblem, choices: StepChoices, tolerances: Tolerances) {
    super(problem, tolerances);
    this.choices = choices;
    this.trial = new Float64Array(problem.dimension);
    this.relaxed = new Float64Array(problem.dimension);
    this.slopesThere = new Float64Array(problem.dimension);
    this.others = new Float64Array(problem.dimension);
  }

  override look(x: number, length: number): boolean {
    const { choices, relaxed, trial } = this;
    if (this.hasChosen) {
      if (this.isStale) this.chooseBy(x, relaxed);
      return super.look(x, length);
    }
    this.read(header.START, trial);
    this.chooseBy(x, trial);
    if (!super.look(x, length)) return false;
    this.hasChosen = true;
    this.read(header.SLOPES, this.slopesThere);
    this.relax(this.slopesThere, length);
    if (!choices.areStale(x, relaxed)) return true;
    this.chooseBy(x, relaxed);
    return super.look(x, length);
  }

  override attempt(length: number): number {
    const error = super.attempt(length);
    this.isStale = false;
    this.staleness = error <= 1 ? this.stalenessAtEnd() : 0;
    return Math.max(error, this.staleness);
  }

  override lengthToChange(): number {
    const { staleness, h } = this;
    if (staleness <= 1) return 0;
    const place = this.stalePlace();
    return h * Math.min(SHORTER, place + ((1 - place) * OVERSHOOT) / staleness);
  }

  override finish(): void {
    super.finish();
    this.choices.release();
    this.hasChosen = false;
  }

  private chooseBy(x: number, state: Float64Array): void {
    this.choices.release();
    this.evaluate(x, state, this.others);
    this.choices.keep();
  }

  /** Where the trial state, with such slopes, goes to in a small share of a length. */
  private relax(slopes: Float64Array, length: number): void {
    const { relaxed, columns } = this;
    const small = RELAXING * length;
    this.read(header.TRIAL, relaxed);
    this.sit();
    kernel.fillMatrix(small);
    if (kernel.factorise() === 0) return;
    const balance = this.at(header.SCRATCH);
    for (let k = 0; k < columns.length; k += 1) doubles[balance + k] = GAMMA * small * slopes[columns[k]!]!;
    kernel.solve(balance);
    for (let k = 0; k < columns.length; k += 1) relaxed[columns[k]!]! += doubles[balance + k]!;
  }

  private stalenessAtEnd(): number {
    const { choices, trial, relaxed, slopesThere, others, steering, h } = this;
    const end = this.x + h;
    this.read(header.TRIAL, trial);
    if (!choices.areStale(end, trial)) return 0;
    if (this.evaluate(end, trial, slopesThere) >= 0) return Infinity;
    this.relax(slopesThere, h);
    if (!choices.areStale(end, relaxed)) return 0;
    this.isStale = true;
    if (this.evaluate(end, relaxed, slopesThere) >= 0) return Infinity;
    choices.release();
    const culprit = this.evaluate(end, relaxed, others);
    choices.restore();
    if (culprit >= 0) return Infinity;
    let sum = 0;
    for (const i of steering)
      sum += square(kernel.shareOfTolerance(i, 0.5 * h * (others[i]! - slopesThere[i]!)));
    return Math.sqrt(sum / Math.max(1, steering.length));
  }

  /** The share of the last attempt at which its choice became wrong, from the far side. */
  private stalePlace(): number {
    const { choices, others, columns, x, h } = this;
    let [right, wrong] = [0, 1];
    for (let i = 0; i < BISECTIONS; i += 1) {
      const middle = (right + wrong) / 2;
      for (const column of columns) others[column] = this.component(column, middle);
      if (choices.areStale(x + middle * h, others)) wrong = middle;
      else right = middle;
    }
    return wrong;
  }
}
