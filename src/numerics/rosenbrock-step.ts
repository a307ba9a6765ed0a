/**
 * Steps of the Rosenbrock method: one, tried from a start, asked about its error and about any place within it; or one after
 * the other, for a whole journey.
 *
 * The work is done in the kernel, src/kernel/rosenbrock-step.ts and journey.ts, which knows the slopes of engines itself and asks for
 * those of other problems. This side says where a step begins, takes Jacobians of other problems, and counts.
 */
import * as header from '../kernel/step-header.ts';
import { differenceJacobian } from './difference-jacobian.ts';
import { pow } from './elementary/power.ts';
import type { OdeProblem, Tolerances } from './integrator.ts';
import type { StepHost } from './kernel-laws.ts';
import { doubles, integers, kernel, Seat, takeStepSeat, takeTangentSeat } from './kernel.ts';
import { stepImage } from './step-image.ts';
import type { TangentFlow } from './tangent-flow.ts';

/** Share of a time by which a difference quotient moves it. */
const SHARE_OF_TIME = pow(2, -26);

const GIVEN_UP = 'the numbers of a step were given up while it was under way';

/** What a journey from step to step goes by. */
export interface Travel {
  /** Steps to be tried, and a length for the first of them; NaN when there is none. */
  readonly triesLeft: number;
  readonly proposed: number;
  /** Steps in which a component stays above a value are not shown; NaN shows all. */
  readonly calm: { readonly component: number; readonly value: number };
  readonly tangent: TangentFlow | undefined;
  /** Looks at the step that was just accepted; true when the journey is to stop there. */
  readonly show: () => boolean;
}

/** A class, so that code compiled for one problem serves for the next. */
export class RosenbrockStep implements StepHost {
  derivativeCalls = 0;
  /** The last component found without a finite slope, or −1 when all had one since the start. */
  culprit = -1;
  protected readonly dimension: number;
  protected readonly columns: Int32Array;
  /** Components with a tolerance. */
  protected readonly steering: Int32Array;
  protected x = 0;
  protected h = 0;
  private readonly problem: OdeProblem;
  private readonly seat: Seat;
  private readonly sizes: Float64Array;
  private readonly stateOfHost: Float64Array;
  private readonly slopesOfHost: Float64Array;
  private isUnderWay = false;
  private tangent: TangentFlow | undefined;
  private showStep: Travel['show'] = () => false;

  constructor(problem: OdeProblem, tolerances: Tolerances) {
    const { words, columns, steering } = stepImage(problem, tolerances);
    this.problem = problem;
    this.dimension = problem.dimension;
    this.columns = columns;
    this.steering = steering;
    this.seat = new Seat(words);
    this.sizes = new Float64Array(problem.dimension);
    for (const i of steering) this.sizes[i] = tolerances.absolute[i]! / tolerances.relative;
    this.stateOfHost = new Float64Array(problem.dimension);
    this.slopesOfHost = new Float64Array(problem.dimension);
  }

  /** Takes slopes and Jacobian at a start, steps of about `length` ahead; false when a slope is not finite. */
  begin(x: number, y: Float64Array, length: number): boolean {
    this.setOut(y);
    return this.look(x, length);
  }

  /** From step to step, from `x` to `xEnd` or to where a step shown stops it; returns how it ended. */
  travel(
    x: number,
    y: Float64Array,
    xEnd: number,
    { triesLeft, proposed, calm, tangent, show }: Travel,
  ): number {
    this.tangent = tangent;
    this.showStep = show;
    this.setOut(y);
    const numbers = this.at(header.STEP_NUMBERS);
    doubles[numbers + header.TRIES_LEFT] = triesLeft;
    doubles[numbers + header.PROPOSED] = proposed;
    doubles[numbers + header.ACCEPTED] = 0;
    doubles[numbers + header.REJECTED] = 0;
    integers[2 * (numbers + header.CALM_COMPONENT)] = calm.component;
    doubles[numbers + header.CALM_ABOVE] = calm.value;
    const outcome = kernel.travel(x, xEnd);
    this.count();
    this.read(header.START, y);
    return outcome;
  }

  /** A number of the journey, by its name in src/kernel/step-header.ts. */
  number(name: number): number {
    this.sit();
    return doubles[this.at(header.STEP_NUMBERS) + name]!;
  }

  private setOut(y: Float64Array): void {
    this.isUnderWay = false;
    // To lay out one of what it takes may cost another its room, but not twice.
    this.sit();
    this.sit();
    this.isUnderWay = true;
    this.write(header.START, y);
  }

  /** The same as `begin`, at the start that the kernel knows. */
  look(x: number, length: number): boolean {
    const { inKernel } = this.problem;
    this.x = x;
    this.sit();
    const isFinite = kernel.lookAhead(this.x) !== 0;
    this.count();
    return isFinite && (inKernel !== undefined || this.takeJacobian(length));
  }

  show(): boolean {
    const isStopped = this.showStep();
    this.sit();
    return isStopped;
  }

  /** Tries a step: its error as a share of the tolerance; NaN when it cannot be made. */
  attempt(length: number): number {
    this.h = length;
    this.sit();
    const error = kernel.attempt(length);
    this.count();
    return error;
  }

  /** A length for the next attempt at which something changes that the last one went past; 0 when there is none. */
  lengthToChange(): number {
    return 0;
  }

  /** A journey is over. */
  finish(): void {
    this.isUnderWay = false;
  }

  /** Writes the state at the end of the last attempt. */
  end(y: Float64Array): void {
    this.sit();
    kernel.writeEnd();
    this.read(header.END, y);
  }

  /** Lets the step that is shown end at another place, and in the state there. */
  endAt(x: number, y: Float64Array): void {
    this.sit();
    doubles[this.at(header.STEP_NUMBERS) + header.STEP_TO] = x;
    this.write(header.END, y);
  }

  /** One component at a share of the last attempt's length. */
  component(i: number, share: number): number {
    this.sit();
    return kernel.component(i, share);
  }

  /** Slopes at any state; the first component without a finite one, or −1. */
  protected evaluate(x: number, state: Float64Array, out: Float64Array): number {
    this.sit();
    this.write(header.SCRATCH, state);
    const culprit = kernel.evaluate(x, this.at(header.SCRATCH), this.at(header.OTHERS));
    this.read(header.OTHERS, out);
    this.count();
    return culprit;
  }

  /** The word at which an array of this step begins in the kernel. */
  protected at(name: number): number {
    return this.seat.base + integers[2 * (this.seat.base + name)]!;
  }

  protected write(name: number, values: Float64Array): void {
    const to = this.at(name);
    for (let i = 0; i < this.dimension; i += 1) doubles[to + i] = values[i]!;
  }

  protected read(name: number, out: Float64Array): void {
    const from = this.at(name);
    for (let i = 0; i < this.dimension; i += 1) out[i] = doubles[from + i]!;
  }

  /** Makes the kernel be about this step and its problem. */
  protected sit(): void {
    const { inKernel } = this.problem;
    inKernel?.sit();
    if (this.isUnderWay && this.seat.base === 0) throw new Error(GIVEN_UP);
    takeStepSeat(this.seat, this);
    takeTangentSeat(this.tangent?.seat);
    // The step may just have been laid out where its engine was.
    inKernel?.sit();
  }

  /** Slopes of a problem that the kernel asks for, in its memory. */
  slopes(x: number, state: number, out: number): void {
    for (let i = 0; i < this.dimension; i += 1) this.stateOfHost[i] = doubles[state + i]!;
    this.problem.derivative(x, this.stateOfHost, this.slopesOfHost);
    if (this.seat.base === 0) throw new Error(GIVEN_UP);
    for (let i = 0; i < this.dimension; i += 1) doubles[out + i] = this.slopesOfHost[i]!;
  }

  /** Takes over what the kernel has counted and found. */
  private count(): void {
    const numbers = this.at(header.STEP_NUMBERS);
    this.derivativeCalls += doubles[numbers + header.CALLS]!;
    this.culprit = doubles[numbers + header.CULPRIT]!;
    doubles[numbers + header.CALLS] = 0;
  }

  /** Jacobian and drift of a problem that the kernel does not know; false when a slope is not finite. */
  private takeJacobian(length: number): boolean {
    const { problem, dimension, columns } = this;
    const start = new Float64Array(dimension);
    const slopes = new Float64Array(dimension);
    const jacobian = new Float64Array(dimension * columns.length);
    const drift = new Float64Array(dimension);
    this.read(header.START, start);
    this.read(header.SLOPES, slopes);
    if (problem.jacobian) this.derivativeCalls += problem.jacobian(this.x, start, slopes, jacobian, drift);
    else if (!this.takeDifferences(length, start, slopes, jacobian, drift)) return false;
    this.sit();
    doubles.set(jacobian, this.at(header.JACOBIAN));
    doubles.set(drift, this.at(header.DRIFT));
    return true;
  }

  private takeDifferences(
    length: number,
    start: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift: Float64Array,
  ): boolean {
    const { columns, sizes, x } = this;
    const scratch = new Float64Array(this.dimension);
    const evaluate = (state: Float64Array, out: Float64Array): number => this.evaluate(x, state, out);
    if (differenceJacobian({ evaluate, columns, sizes, scratch }, start, slopes, jacobian) >= 0) return false;
    if (this.problem.autonomous) return true;
    const moved = x + SHARE_OF_TIME * Math.max(Math.abs(x), length);
    const culprit = this.evaluate(moved, start, scratch);
    for (let i = 0; i < drift.length; i += 1) drift[i] = (scratch[i]! - slopes[i]!) / (moved - x);
    return culprit < 0;
  }
}
