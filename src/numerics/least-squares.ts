/**
 * Non-linear least squares: the parameters p that make S = Σ rᵢ(p)² smallest, and how well they are known.
 *
 * Residuals come divided by the standard error of their reading, so that S is χ² if the model is right. At the minimum,
 * with the Jacobian J = ∂r/∂p,
 *
 *   covariance of p   C = s² (JᵀJ)⁻¹,  s² = max(1, S/(n − m))
 *
 * so that readings which scatter more than they were said to widen the answer, and readings which happen to scatter less
 * do not narrow it. Source: any text on regression, for example Draper & Smith, Applied Regression Analysis (from memory).
 *
 * The steps are those of ml-levenberg-marquardt, taken one at a time: by itself it goes on from a step that made things
 * worse, and ends only by a count of iterations or at S ≈ 0, which noisy readings never reach. Here a worse step is taken
 * back and damped more, and the search ends when a step gains nothing. Asking twice for the same parameters costs nothing.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { square } from './elementary/whole-powers.ts';

export interface LeastSquaresProblem {
  /** Where to begin. Parameters should be scaled or logarithmic: a change of one is a large change. */
  readonly start: readonly number[];
  readonly residuals: (parameters: readonly number[]) => ArrayLike<number>;
  /** Steps for the derivatives; 1e-4 if not given. A model that is reckoned to a tolerance wants more. */
  readonly difference?: number;
  readonly lower?: readonly number[];
  readonly upper?: readonly number[];
  readonly mostIterations?: number;
  /** A step that lowers S by less than this and by less than this share of S has arrived; 1e-5 if not given. */
  readonly leastGain?: number;
}

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  readonly sumOfSquares: number;
  /** n − m, at least 0. */
  readonly degreesOfFreedom: number;
  /** s: by how much the readings scatter more than they were said to, at least 1. */
  readonly excessScatter: number;
  /** C, row by row. Infinite where the readings say nothing. */
  readonly covariance: readonly (readonly number[])[];
  readonly correlation: readonly (readonly number[])[];
  /** Largest over smallest singular value of J with its columns scaled to unit length. */
  readonly conditionNumber: number;
  /** The change of the parameters that the residuals notice least, largest component ±1. */
  readonly weakestDirection: readonly number[];
  readonly converged: boolean;
}

const FIRST_DAMPING = 1e-3;
const DAMPING_UP = 11;
const DAMPING_DOWN = 9;
const MOST_DAMPING = 1e8;

export function leastSquares(problem: LeastSquaresProblem): LeastSquaresFit {
  const residuals = remembered(problem.residuals);
  const { parameters, converged } = minimum(problem, residuals);
  const jacobian = differences(residuals, parameters, problem.difference ?? 1e-4);
  return { ...knowledge(parameters, residuals(parameters), jacobian), converged };
}

type Residuals = (parameters: readonly number[]) => readonly number[];

function remembered(model: LeastSquaresProblem['residuals']): Residuals {
  const known = new Map<string, readonly number[]>();
  return (parameters) => {
    const key = parameters.join(' ');
    const values = known.get(key) ?? Array.from(model(parameters));
    known.set(key, values);
    return values;
  };
}

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

function minimum(
  { start, difference = 1e-4, lower, upper, mostIterations = 60, leastGain = 1e-5 }: LeastSquaresProblem,
  residuals: Residuals,
): Pick<LeastSquaresFit, 'parameters' | 'converged'> {
  let parameters = [...start];
  let sum = squares(residuals(parameters));
  const x = residuals(parameters).map((_, i) => i);
  const data = { x, y: x.map(() => 0) };
  let damping = FIRST_DAMPING;
  for (let i = 0; i < mostIterations && damping <= MOST_DAMPING; i += 1) {
    const step = levenbergMarquardt(data, (own) => at(residuals(own)), {
      initialValues: parameters,
      damping,
      maxIterations: 1,
      errorTolerance: 0,
      gradientDifference: difference,
      ...(lower ? { minValues: lower } : {}),
      ...(upper ? { maxValues: upper } : {}),
    });
    const gain = sum - step.parameterError;
    if (gain > 0) {
      parameters = step.parameterValues;
      sum = step.parameterError;
      damping /= DAMPING_DOWN;
      if (gain < leastGain * (1 + sum)) return { parameters, converged: true };
    } else damping *= DAMPING_UP;
  }
  // No step however short gains anything: that is a minimum too.
  return { parameters, converged: damping > MOST_DAMPING };
}

const at =
  (values: readonly number[]) =>
  (i: number): number =>
    values[i]!;

/** J by central differences. */
function differences(residuals: Residuals, parameters: readonly number[], step: number): Matrix {
  const columns = parameters.map((value, k) => {
    const up = residuals(parameters.with(k, value + step));
    const down = residuals(parameters.with(k, value - step));
    return up.map((own, i) => (own - down[i]!) / (2 * step));
  });
  return new Matrix(columns).transpose();
}

function knowledge(
  parameters: readonly number[],
  residuals: readonly number[],
  jacobian: Matrix,
): Omit<LeastSquaresFit, 'converged'> {
  const sumOfSquares = squares(residuals);
  const degreesOfFreedom = Math.max(0, residuals.length - parameters.length);
  const excessScatter = degreesOfFreedom > 0 ? Math.max(1, Math.sqrt(sumOfSquares / degreesOfFreedom)) : 1;
  const { covariance, conditionNumber, weakestDirection } = inverseOf(jacobian);
  const scaled = covariance.map((row) => row.map((value) => value * square(excessScatter)));
  const errors = scaled.map((row, i) => Math.sqrt(row[i]!));
  return {
    parameters,
    residuals,
    sumOfSquares,
    degreesOfFreedom,
    excessScatter,
    covariance: scaled,
    correlation: scaled.map((row, i) =>
      row.map((value, k) => (i === k ? 1 : value / errors[i]! / errors[k]!)),
    ),
    conditionNumber,
    weakestDirection,
  };
}

/** (JᵀJ)⁻¹ by singular values of J with columns of unit length, so that unlike parameters do not spoil the arithmetic. */
function inverseOf(
  jacobian: Matrix,
): Pick<LeastSquaresFit, 'covariance' | 'conditionNumber' | 'weakestDirection'> {
  const count = jacobian.columns;
  const lengths = Array.from({ length: count }, (_, k) => jacobian.getColumnVector(k).norm());
  const unit = jacobian.clone();
  lengths.forEach((length, k) => {
    if (length > 0) unit.mulColumn(k, 1 / length);
  });
  const { diagonal, rightSingularVectors: vectors } = new SingularValueDecomposition(unit, {
    autoTranspose: true,
  });
  const entry = (i: number, k: number): number => {
    let sum = 0;
    for (let j = 0; j < count; j += 1) sum += (vectors.get(i, j) * vectors.get(k, j)) / square(diagonal[j]!);
    return sum / (lengths[i]! * lengths[k]!);
  };
  const covariance = Array.from({ length: count }, (_, i) =>
    Array.from({ length: count }, (_u, k) => (isFinite(entry(i, k)) ? entry(i, k) : i === k ? Infinity : 0)),
  );
  const least = diagonal.indexOf(Math.min(...diagonal));
  const direction = lengths.map((length, k) => vectors.get(k, least) / (length > 0 ? length : 1));
  const largest = direction.reduce((best, value) => (Math.abs(value) > Math.abs(best) ? value : best), 0);
  return {
    covariance,
    conditionNumber: Math.max(...diagonal) / Math.min(...diagonal),
    weakestDirection: direction.map((value) => value / largest),
  };
}
