/**
 * The coefficients of the Rosenbrock method against the conditions they were made to meet.
 *
 * Source of the conditions: Hairer & Wanner, Solving Ordinary Differential Equations II, table IV.7.1 (order, with the
 * diagonal γ taken to the right-hand sides), section IV.7 (stability function), equations VI.4.11 to 13 (stiffly accurate
 * pairs); from memory, as are the numbers of the equations. Source of the sums αᵢ and γᵢ: C2 to C4 and D1 to D4 of their
 * program rodas.f (seen: copies in three public repositories, digit for digit the same).
 */
import { describe, expect, it } from 'vitest';
import {
  DENSE_CUBE_WEIGHTS,
  DENSE_SQUARE_WEIGHTS,
  ERROR_WEIGHTS,
  GAMMA,
  slopeWeights,
  SOLUTION_WEIGHTS,
  STAGE_WEIGHTS,
  STAGES,
} from '../../src/numerics/rosenbrock-coefficients.ts';

type Vector = readonly number[];
type Matrix = readonly Vector[];

const ROUNDING = 1e-14;
const indices = Array.from({ length: STAGES }, (_, i) => i);
const ones: Vector = indices.map(() => 1);
const dot = (a: Vector, b: Vector): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const times = (matrix: Matrix, v: Vector): Vector => matrix.map((row) => dot(row, v));
const product = (a: Vector, b: Vector): Vector => a.map((value, i) => value * b[i]!);

/** The classical form kᵢ = h f(y₀ + Σ αᵢⱼ kⱼ) + h J Σ γᵢⱼ kⱼ, y₁ = y₀ + Σ bᵢ kᵢ, by the unit vectors of the weights. */
const classical = (weights: Vector): Vector => [...slopeWeights(indices.map((i) => weights[i] ?? 0))];
const alpha: Matrix = STAGE_WEIGHTS.map(classical);
const gamma: Matrix = indices.map((i) => classical(indices.map((j) => (i === j ? 1 : 0))));
const beta: Matrix = alpha.map((row, i) => row.map((value, j) => value + gamma[i]![j]!));
const betaBelow: Matrix = beta.map((row, i) => row.map((value, j) => (i === j ? 0 : value)));
const solution = classical(SOLUTION_WEIGHTS);
const embedded = classical(SOLUTION_WEIGHTS.map((weight, i) => weight - ERROR_WEIGHTS[i]!));
const alphaSums = times(alpha, ones);
const alphaSquares = product(alphaSums, alphaSums);

/** Σ over the eight trees of up to four knots, for either form of β. */
const trees = (b: Vector, form: Matrix): Vector => {
  const sums = times(form, ones);
  return [
    dot(b, ones),
    dot(b, sums),
    dot(b, alphaSquares),
    dot(b, times(form, sums)),
    dot(b, product(alphaSums, alphaSquares)),
    dot(b, product(alphaSums, times(alpha, sums))),
    dot(b, times(form, alphaSquares)),
    dot(b, times(form, times(form, sums))),
  ];
};
const names = ['τ', '[τ]', '[τ,τ]', '[[τ]]', '[τ,τ,τ]', '[τ,[τ]]', '[[τ,τ]]', '[[[τ]]]'];
const g = GAMMA;
const rightHandSides: Vector = [
  1,
  1 / 2 - g,
  1 / 3,
  1 / 6 - g + g ** 2,
  1 / 4,
  1 / 8 - g / 3,
  1 / 12 - g / 3,
  1 / 24 - g / 2 + (3 / 2) * g ** 2 - g ** 3,
];
const orders: Vector = [1, 2, 3, 3, 4, 4, 4, 4];
/** Of the trees up to three knots: the exact solution is θ^order/density. */
const densities: Vector = [1, 2, 3, 6];
const conditions = names.map((name, i) => ({ name, i, order: orders[i]! }));

describe('the form without products with the Jacobian', () => {
  it('stands for the published sums α and γ', () => {
    // rodas.f, method 1: C2, C3, C4 and D1 to D4.
    for (const [i, sum] of [0, 0.386, 0.21, 0.63, 1, 1].entries()) expect(alphaSums[i]).toBeCloseTo(sum, 14);
    for (const [i, sum] of [0.25, -0.1043, 0.1035, -0.0362, 0, 0].entries())
      expect(times(gamma, ones)[i]).toBeCloseTo(sum, 14);
  });

  it('has the same γ in every stage', () => {
    for (const i of indices) expect(gamma[i]![i]).toBe(GAMMA);
  });
});

describe('the conditions of order', () => {
  const missedBy = (b: Vector, i: number): number => Math.abs(trees(b, betaBelow)[i]! - rightHandSides[i]!);
  const upToThree = conditions.filter(({ order }) => order <= 3);
  const four = conditions.filter(({ order }) => order === 4);

  it.each(conditions)('the solution meets that of $name, order $order', ({ i }) => {
    expect(missedBy(solution, i)).toBeLessThan(ROUNDING);
  });

  it.each(upToThree)('the embedded solution meets that of $name, order $order', ({ i }) => {
    expect(missedBy(embedded, i)).toBeLessThan(ROUNDING);
  });

  it.each(four)('the embedded solution misses that of $name, or there would be no error to see', ({ i }) => {
    expect(missedBy(embedded, i)).toBeGreaterThan(1e-3);
  });

  it.each(upToThree)('any place within the step meets that of $name, order $order', ({ i, order }) => {
    for (const share of [0.1, 0.37, 0.5, 0.82, 1]) {
      const within = SOLUTION_WEIGHTS.map(
        (weight, s) =>
          share * (weight + (1 - share) * (DENSE_SQUARE_WEIGHTS[s]! + share * DENSE_CUBE_WEIGHTS[s]!)),
      );
      const expected = share ** order / densities[i]!;
      expect(Math.abs(trees(classical(within), beta)[i]! - expected)).toBeLessThan(ROUNDING);
    }
  });
});

describe('beyond order 4', () => {
  it('integrates a slope of x⁴ exactly, which keeps the ledgers of works tight', () => {
    // Σ bᵢ αᵢ⁴ = 1/5, the condition of order 5 for a plain quadrature.
    expect(Math.abs(dot(solution, product(alphaSquares, alphaSquares)) - 1 / 5)).toBeLessThan(ROUNDING);
  });
});

describe('stability', () => {
  /** R(z) = 1 + z bᵀ (I − z β)⁻¹ 1 by forward substitution; β is lower triangular. */
  const stability = (b: Vector, re: number, im: number): { readonly re: number; readonly im: number } => {
    const k: { re: number; im: number }[] = [];
    const sumBefore = (weights: Vector): { re: number; im: number } =>
      k.reduce(
        (sum, { re: x, im: y }, j) => ({ re: sum.re + weights[j]! * x, im: sum.im + weights[j]! * y }),
        {
          re: 0,
          im: 0,
        },
      );
    const timesZ = ({ re: x, im: y }: { re: number; im: number }): { re: number; im: number } => ({
      re: re * x - im * y,
      im: re * y + im * x,
    });
    for (const row of beta) {
      const { re: x, im: y } = timesZ(sumBefore(row));
      const [p, q] = [1 - GAMMA * re, -GAMMA * im];
      const size = p * p + q * q;
      k.push({ re: ((1 + x) * p + y * q) / size, im: (y * p - (1 + x) * q) / size });
    }
    const end = timesZ(sumBefore(b));
    return { re: 1 + end.re, im: end.im };
  };
  const size = (b: Vector, re: number, im: number): number => {
    const r = stability(b, re, im);
    return Math.hypot(r.re, r.im);
  };

  it('follows eᶻ to order 4', () => {
    expect(Math.abs(stability(solution, 0.01, 0).re - Math.exp(0.01))).toBeLessThan(1e-12);
    expect(Math.abs(stability(solution, 0.1, 0).re - Math.exp(0.1))).toBeLessThan(1e-7);
  });

  it.each([
    ['the solution', solution],
    ['the embedded solution', embedded],
  ])('lets %s damp what is infinitely stiff: R(∞) = 0', (_name, b) => {
    // bᵀ β⁻¹ 1 = 1 when b is the last row of β, or of β without its last stage.
    expect(size(b, -1e8, 0)).toBeLessThan(1e-6);
    expect(size(b, -1e10, 0)).toBeLessThan(1e-6);
  });

  it.each([
    ['the solution', solution],
    ['the embedded solution', embedded],
  ])('keeps %s from growing anywhere on the imaginary axis, and so in the left half-plane', (_name, b) => {
    for (let exponent = -3; exponent < 5; exponent += 0.02)
      expect(size(b, 0, 10 ** exponent)).toBeLessThan(1 + 1e-13);
  });

  it('makes both solutions stiffly accurate: they are their own last stages', () => {
    for (const i of indices) {
      expect(beta[STAGES - 1]![i]).toBeCloseTo(solution[i]!, 14);
      expect(beta[STAGES - 2]![i]).toBeCloseTo(embedded[i]!, 14);
      expect(alpha[STAGES - 1]![i]).toBeCloseTo(embedded[i]!, 14);
    }
  });
});
