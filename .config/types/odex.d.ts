/**
 * What this project uses of odex 3.0.0-rc.4. The package ships TypeScript sources that do not pass our strict
 * options, so `paths` in the compiler settings points here instead.
 *
 * Known limits of that version, to be respected by the one module that wraps it:
 * - `xEnd = 0` is taken as "not given": shift time so that the end is never zero.
 * - a derivative that returns NaN is accepted silently: check every value.
 * - initial states and tolerance lists must be plain arrays, not typed arrays.
 * - the evaluation counter is never reset; the step counters are reset by each call of `solutionSegments`.
 * - `f` of a segment reads the solver's own work array: it is valid only until the next segment is asked for.
 * - the start step is never shorter than 1e-4 unless half the interval is shorter.
 */

/** With `rawFunction: true` the slopes are written into `slopes` and nothing is returned. */
export type RawDerivative = (x: number, y: readonly number[], slopes: number[]) => void;

export interface Options {
  /** Exceeding it throws an Error. Default 10000. */
  readonly maxSteps?: number;
  /** Default 1e-4. */
  readonly initialStepSize?: number;
  /** 0 (the default) means the whole interval. */
  readonly maxStepSize?: number;
  /** More than 2; default 9. */
  readonly maxExtrapolationColumns?: number;
  /** Default 1e-5; only the first entry of a list chooses the starting order. */
  readonly relativeTolerance?: number | number[];
  /** Default 1e-5. */
  readonly absoluteTolerance?: number | number[];
  /** Default true. Without it `SolutionSegment.f` throws. */
  readonly denseOutput?: boolean;
  /** Components to interpolate; default all. */
  readonly denseComponents?: number[];
  /** Declared as the only form used here: the derivative writes into its third argument. */
  readonly rawFunction: true;
}

/** One accepted step. */
export interface SolutionSegment {
  readonly x0: number;
  readonly x1: number;
  /** State at x1; a fresh copy. */
  readonly y: number[];
  /** Component `component` at `x`, with x0 <= x <= x1. */
  readonly f: (component: number, x: number) => number;
}

/** Whether a step stands, and how long the next may be for its interpolation. */
export interface Acceptance {
  readonly accept: boolean;
  hoptde?: number;
}

export declare class Solver {
  constructor(derivative: RawDerivative, dimension: number, options: Options);
  /** Leave the loop with `break` to stop early. */
  solutionSegments(x0: number, y0: number[], xEnd?: number): Generator<SolutionSegment, undefined>;
  /** Step size per column, a private field: read after a rejected last step before it was ever written. */
  readonly hh: number[];
  /** One line of the extrapolation table: false if the step is hopeless. Like all below, private in the package. */
  midEx(j: number, h: number, x: number, y: number[], slopes: number[]): boolean;
  acceptStep(kc: number, h: number, x: number, y: number[], dz: number[]): Acceptance;
  readonly options: {
    /** Read at the beginning of each journey. */
    initialStepSize: number;
    readonly stepSizeFac1: number;
    readonly stepSizeFac2: number;
    readonly stepSafetyFactor1: number;
    readonly stepSafetyFactor2: number;
    readonly interpolationFormulaDegree: number;
    readonly denseComponents: readonly number[];
  };
  readonly hMax: number;
  readonly err: number;
  /** Work per unit of length, and work, of each column. */
  readonly w: number[];
  readonly a: readonly number[];
  readonly scal: readonly number[];
  readonly dens: readonly number[];
  readonly errfac: readonly number[];
  /** Counters: ordinary fields at run time. */
  readonly nEval: number;
  readonly nStep: number;
  readonly nAccept: number;
  readonly nReject: number;
}
