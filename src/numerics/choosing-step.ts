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
import { square } from './elementary/whole-powers.ts';
import type { OdeProblem, StepChoices, Tolerances } from './integrator.ts';
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
  private readonly relaxed: Float64Array;
  private readonly balance: Float64Array;
  private readonly others: Float64Array;
  /** As a share of the tolerance, what the choice was wrong by at the end of the last attempt. */
  private staleness = 0;
  /** True when the choice kept in the last attempt is not the one for the next step. */
  private isStale = false;
  private isUnderWay = false;

  constructor(problem: OdeProblem, choices: StepChoices, tolerances: Tolerances) {
    super(problem, tolerances);
    this.choices = choices;
    this.relaxed = new Float64Array(problem.dimension);
    this.others = new Float64Array(problem.dimension);
    this.balance = new Float64Array(this.columns.length);
  }

  override begin(x: number, y: Float64Array, length: number): boolean {
    const { choices, relaxed } = this;
    if (this.isUnderWay) {
      if (this.isStale) this.chooseBy(x, relaxed);
      return super.begin(x, y, length);
    }
    this.chooseBy(x, y);
    if (!super.begin(x, y, length)) return false;
    this.isUnderWay = true;
    this.relax(this.slopes[0]!, length);
    if (!choices.areStale(x, relaxed)) return true;
    this.chooseBy(x, relaxed);
    return this.look(length);
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
    this.choices.release();
    this.isUnderWay = false;
  }

  private chooseBy(x: number, state: Float64Array): void {
    this.choices.release();
    this.evaluate(x, state, this.scratch);
    this.choices.keep();
  }

  /** Where the trial state, with such slopes, goes to in a small share of a length. */
  private relax(slopes: Float64Array, length: number): void {
    const { relaxed, trial, columns, solver, balance } = this;
    const small = RELAXING * length;
    relaxed.set(trial);
    this.fillMatrix(small);
    if (!solver.factorise()) return;
    for (let k = 0; k < columns.length; k += 1) balance[k] = GAMMA * small * slopes[columns[k]!]!;
    solver.solve(balance);
    for (let k = 0; k < columns.length; k += 1) relaxed[columns[k]!]! += balance[k]!;
  }

  private stalenessAtEnd(): number {
    const { choices, trial, relaxed, scratch, others, steering, h } = this;
    const end = this.x + h;
    if (!choices.areStale(end, trial)) return 0;
    if (this.evaluate(end, trial, scratch) >= 0) return Infinity;
    this.relax(scratch, h);
    if (!choices.areStale(end, relaxed)) return 0;
    this.isStale = true;
    if (this.evaluate(end, relaxed, scratch) >= 0) return Infinity;
    choices.release();
    const culprit = this.evaluate(end, relaxed, others);
    choices.restore();
    if (culprit >= 0) return Infinity;
    let sum = 0;
    for (const i of steering) sum += square(this.share(i, 0.5 * h * (others[i]! - scratch[i]!)));
    return Math.sqrt(sum / Math.max(1, steering.length));
  }

  /** The share of the last attempt at which its choice became wrong, from the far side. */
  private stalePlace(): number {
    const { choices, scratch, columns, x, h } = this;
    let [right, wrong] = [0, 1];
    for (let i = 0; i < BISECTIONS; i += 1) {
      const middle = (right + wrong) / 2;
      for (const column of columns) scratch[column] = this.component(column, middle);
      if (choices.areStale(x + middle * h, scratch)) wrong = middle;
      else right = middle;
    }
    return wrong;
  }
}
