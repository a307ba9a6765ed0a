/**
 * One step of the Rosenbrock method: tried from a start, asked about its error and about any place within it.
 *
 * Only the coupled components take part in the linear systems; what becomes of the others, which merely add up, is told by
 * rosenbrock-reading.ts.
 *
 * Where the slopes depend on x itself, x moves through the stages as a component of slope 1 would: by h tᵢ.
 */
import { DenseLinearSolver } from './dense-linear-solver.ts';
import { differenceJacobian } from './difference-jacobian.ts';
import { pow } from './elementary/power.ts';
import type { OdeProblem, Tolerances } from './integrator.ts';
import { GAMMA, STAGES } from './rosenbrock-coefficients.ts';
import { RosenbrockReading } from './rosenbrock-reading.ts';
import { CLOCK, COUPLING, ERROR_SLOPE_WEIGHTS, FIRST_ADDED, PLACES, WEIGHTS } from './rosenbrock-tables.ts';

/** Share of a time by which a difference quotient moves it. */
const SHARE_OF_TIME = pow(2, -26);

/** The first step may change a component by about this share of its size. */
const FIRST_CHANGE = 0.01;

/** The components that have a column, and the column of each component or −1. */
function columnsOf({ dimension, coupled }: OdeProblem): { columns: Int32Array; columnOf: Int32Array } {
  const columns = Int32Array.from(coupled ?? Array.from({ length: dimension }, (_, i) => i));
  const columnOf = new Int32Array(dimension).fill(-1);
  for (const [column, component] of columns.entries()) columnOf[component] = column;
  return { columns, columnOf };
}

/** A class, so that code compiled for one problem serves for the next. */
export class RosenbrockStep {
  derivativeCalls = 0;
  /** The last component found without a finite slope, or −1 when all had one since the start. */
  culprit = -1;
  private readonly problem: OdeProblem;
  private readonly autonomous: boolean;
  private readonly relative: number;
  private readonly absolute: Float64Array;
  protected readonly columns: Int32Array;
  private readonly columnOf: Int32Array;
  /** Components with a tolerance, and whether any of them has no column. */
  protected readonly steering: Int32Array;
  private readonly addingSteers: boolean;
  protected readonly start: Float64Array;
  protected readonly trial: Float64Array;
  protected readonly scratch: Float64Array;
  private readonly sizes: Float64Array;
  private readonly jacobian: Float64Array;
  /** ∂slope/∂x. */
  private readonly drift: Float64Array;
  /** By stages. */
  protected readonly slopes: readonly Float64Array[];
  /** uᵢ, stage after stage. */
  private readonly stages: Float64Array;
  protected readonly solver: DenseLinearSolver;
  private readonly reading: RosenbrockReading;
  protected x = 0;
  protected h = 0;

  constructor(problem: OdeProblem, { relative, absolute }: Tolerances) {
    const { dimension } = problem;
    const { columns, columnOf } = columnsOf(problem);
    const width = columns.length;
    const steering = [...absolute.keys()].filter((i) => absolute[i]! < Infinity);
    this.problem = problem;
    this.autonomous = problem.autonomous ?? false;
    this.relative = relative;
    this.absolute = absolute;
    this.columns = columns;
    this.columnOf = columnOf;
    this.steering = Int32Array.from(steering);
    this.addingSteers = steering.some((i) => columnOf[i]! < 0);
    this.start = new Float64Array(dimension);
    this.trial = new Float64Array(dimension);
    this.scratch = new Float64Array(dimension);
    this.sizes = new Float64Array(dimension);
    for (const i of steering) this.sizes[i] = absolute[i]! / relative;
    this.jacobian = new Float64Array(dimension * width);
    this.drift = new Float64Array(dimension);
    const slopes = new Float64Array(STAGES * dimension);
    this.slopes = Array.from({ length: STAGES }, (_, s) =>
      slopes.subarray(s * dimension, (s + 1) * dimension),
    );
    this.stages = new Float64Array(STAGES * width);
    this.solver = new DenseLinearSolver(width);
    const { start, trial, stages, jacobian, drift } = this;
    this.reading = new RosenbrockReading({
      start,
      trial,
      columns,
      columnOf,
      stages,
      slopes,
      jacobian,
      drift,
    });
  }

  /** Takes slopes and Jacobian at a start, steps of about `length` ahead; false when a slope is not finite. */
  begin(x: number, y: Float64Array, length: number): boolean {
    this.x = x;
    for (let i = 0; i < y.length; i += 1) this.start[i] = y[i]!;
    return this.look(length);
  }

  protected look(length: number): boolean {
    const { problem, start, trial, jacobian, drift, x } = this;
    const slopes = this.slopes[0]!;
    this.culprit = -1;
    for (let i = 0; i < start.length; i += 1) trial[i] = start[i]!;
    if (this.evaluate(x, trial, slopes) >= 0) return false;
    if (!problem.jacobian) return this.takeDifferences(length) < 0;
    this.derivativeCalls += problem.jacobian(x, trial, slopes, jacobian, drift);
    return true;
  }

  /** A cautious length for a step of which nothing else is known. */
  firstLength(): number {
    const { steering, sizes, start } = this;
    const slopes = this.slopes[0]!;
    let quickest = 0;
    for (const i of steering)
      quickest = Math.max(quickest, Math.abs(slopes[i]!) / (sizes[i]! + Math.abs(start[i]!)));
    return FIRST_CHANGE / quickest;
  }

  /** Tries a step: its error as a share of the tolerance; NaN when it cannot be made. */
  attempt(length: number): number {
    const { trial, slopes, solver } = this;
    this.h = length;
    this.reading.startAgain(length);
    this.fillMatrix(length);
    if (!solver.factorise()) return NaN;
    for (let s = 0; s < STAGES; s += 1) {
      if (s > 0) {
        this.moveTrial(s);
        if (this.evaluate(this.x + PLACES[s]! * length, trial, slopes[s]!) >= 0) return NaN;
      }
      this.solveStage(s);
    }
    this.addStage(STAGES - 1);
    return this.errorShare();
  }

  /** A length for the next attempt at which something changes that the last one went past; 0 when there is none. */
  lengthToChange(): number {
    return 0;
  }

  /** A journey is over. */
  finish(): void {
    // Steps without choices keep nothing for the next.
  }

  /** Writes the state at the end of the last attempt. */
  end(y: Float64Array): void {
    this.reading.end(y);
  }

  /** One component at a share of the last attempt's length. */
  component(i: number, share: number): number {
    return this.reading.component(i, share);
  }

  protected evaluate(x: number, state: Float64Array, out: Float64Array): number {
    this.derivativeCalls += 1;
    this.problem.derivative(x, state, out);
    for (let i = 0; i < out.length; i += 1) if (!Number.isFinite(out[i]!)) return (this.culprit = i);
    return -1;
  }

  /** Jacobian and drift of a problem that does not know its own: the first component without a finite slope, or −1. */
  private takeDifferences(length: number): number {
    const { columns, sizes, scratch, trial, jacobian, drift, x } = this;
    const slopes = this.slopes[0]!;
    const evaluate = (state: Float64Array, out: Float64Array): number => this.evaluate(x, state, out);
    const culprit = differenceJacobian({ evaluate, columns, sizes, scratch }, trial, slopes, jacobian);
    if (culprit >= 0 || this.autonomous) return culprit;
    const moved = x + SHARE_OF_TIME * Math.max(Math.abs(x), length);
    const found = this.evaluate(moved, trial, scratch);
    for (let i = 0; i < drift.length; i += 1) drift[i] = (scratch[i]! - slopes[i]!) / (moved - x);
    return found;
  }

  /** I − γ h J, of steps of length h. */
  protected fillMatrix(h: number): void {
    const { columns, jacobian } = this;
    const { matrix } = this.solver;
    const width = columns.length;
    const factor = GAMMA * h;
    for (let r = 0, at = 0; r < width; r += 1) {
      const row = columns[r]! * width;
      for (let k = 0; k < width; k += 1, at += 1) matrix[at] = -factor * jacobian[row + k]!;
      matrix[r * width + r]! += 1;
    }
  }

  /** To where a stage looks, by the stages before it. Only what slopes depend on moves. */
  private moveTrial(s: number): void {
    if (s >= FIRST_ADDED) {
      this.addStage(s - 1);
      return;
    }
    const { columns, stages, start, trial } = this;
    const width = columns.length;
    const offset = s * STAGES;
    for (let k = 0; k < width; k += 1) {
      const component = columns[k]!;
      let sum = start[component]!;
      for (let j = 0, i = k; j < s; j += 1, i += width) sum += WEIGHTS[offset + j]! * stages[i]!;
      trial[component] = sum;
    }
  }

  private addStage(s: number): void {
    const { columns, stages, trial } = this;
    for (let k = 0, i = s * columns.length; k < columns.length; k += 1, i += 1)
      trial[columns[k]!]! += stages[i]!;
  }

  private solveStage(s: number): void {
    const { columns, stages, drift, h, solver } = this;
    const slopes = this.slopes[s]!;
    const width = columns.length;
    const drifted = h * h * CLOCK[s]!;
    for (let k = 0; k < width; k += 1) {
      let sum = h * slopes[columns[k]!]! + drifted * drift[columns[k]!]!;
      for (let j = 0, i = k; j < s; j += 1, i += width) sum += COUPLING[s * STAGES + j]! * stages[i]!;
      stages[s * width + k] = GAMMA * sum;
    }
    solver.solve(stages, s * width);
  }

  /** Root of the mean square over the components with a tolerance. */
  private errorShare(): number {
    const { steering, columns, columnOf, stages, reading } = this;
    const last = (STAGES - 1) * columns.length;
    let sum = 0;
    if (this.addingSteers) reading.sum(ERROR_SLOPE_WEIGHTS);
    for (const i of steering) {
      const k = columnOf[i]!;
      const error = k < 0 ? reading.gain(i, ERROR_SLOPE_WEIGHTS) : stages[last + k]!;
      const share = this.share(i, error);
      sum += share * share;
    }
    return Math.sqrt(sum / Math.max(1, steering.length));
  }

  /** An error of one component, as a share of what is tolerated. */
  protected share(i: number, error: number): number {
    const { start, trial, absolute, relative } = this;
    return error / (absolute[i]! + relative * Math.max(Math.abs(start[i]!), Math.abs(trial[i]!)));
  }
}
