/**
 * The coefficients of RODAS3 against the conditions they were made to meet, and the order that its steps show.
 *
 * Source of the conditions: Hairer & Wanner, Solving Ordinary Differential Equations II, table IV.7.1 (order, in the form
 * with the diagonal kept in β) and section IV.7 (stability function); from memory. Source of the sums αᵢ and γᵢ: tables of a
 * public program that has the method (seen).
 */
import { describe, expect, it } from 'vitest';
import {
  DENSE_SQUARE_WEIGHTS,
  ERROR_WEIGHTS,
  GAMMA,
  SOLUTION_WEIGHTS,
  STAGE_COUPLING,
  STAGE_WEIGHTS,
} from '../../src/numerics/rodas3-coefficients.ts';

type Vector = readonly number[];
type Matrix = readonly Vector[];

const ROUNDING = 1e-14;
const STAGES = SOLUTION_WEIGHTS.length;
const indices = Array.from({ length: STAGES }, (_, i) => i);
const ones: Vector = indices.map(() => 1);
const dot = (a: Vector, b: Vector): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
const times = (matrix: Matrix, v: Vector): Vector => matrix.map((row) => dot(row, v));
const product = (a: Vector, b: Vector): Vector => a.map((value, i) => value * b[i]!);

/** Weights of the increments kᵢ = h f(y₀ + Σ αᵢⱼ kⱼ) + h J Σ γᵢⱼ kⱼ for weights of the stages: (I/γ − C)ᵀ b = w. */
function classical(weights: Vector): Vector {
  const b = indices.map((i) => weights[i] ?? 0);
  for (const i of indices.toReversed()) {
    for (let j = i + 1; j < STAGES; j += 1) b[i]! += STAGE_COUPLING[j]![i]! * b[j]!;
    b[i]! *= GAMMA;
  }
  return b;
}
const alpha: Matrix = STAGE_WEIGHTS.map(classical);
const gamma: Matrix = indices.map((i) => classical(indices.map((j) => (i === j ? 1 : 0))));
const beta: Matrix = alpha.map((row, i) => row.map((value, j) => value + gamma[i]![j]!));
const solution = classical(SOLUTION_WEIGHTS);
const embeddedWeights = SOLUTION_WEIGHTS.map((weight, i) => weight - ERROR_WEIGHTS[i]!);
const embedded = classical(embeddedWeights);
const alphaSums = times(alpha, ones);
const gammaSums = times(gamma, ones);
const betaSums = times(beta, ones);

/** Trees of up to three knots: what a method makes of each, and what is right. */
const trees = [
  { name: 'τ', order: 1, sum: (b: Vector) => dot(b, ones), right: 1 },
  { name: '[τ]', order: 2, sum: (b: Vector) => dot(b, betaSums), right: 1 / 2 },
  { name: '[τ,τ]', order: 3, sum: (b: Vector) => dot(b, product(alphaSums, alphaSums)), right: 1 / 3 },
  { name: '[[τ]]', order: 3, sum: (b: Vector) => dot(b, times(beta, betaSums)), right: 1 / 6 },
];
const upToTwo = trees.filter(({ order }) => order <= 2);

describe('the conditions of order', () => {
  it.each(trees)('the solution meets that of $name', ({ sum, right }) => {
    expect(Math.abs(sum(solution) - right)).toBeLessThan(ROUNDING);
  });

  it.each(upToTwo)('the embedded solution meets that of $name', ({ sum, right }) => {
    expect(Math.abs(sum(embedded) - right)).toBeLessThan(ROUNDING);
  });

  it('the embedded solution misses those of order 3, or there would be no error to see', () => {
    for (const { order, sum, right } of trees)
      if (order === 3) expect(Math.abs(sum(embedded) - right)).toBeGreaterThan(1e-2);
  });

  it.each(upToTwo)('any place within the step meets that of $name', ({ order, sum, right }) => {
    for (const share of [0.1, 0.37, 0.5, 0.82, 1]) {
      const within = SOLUTION_WEIGHTS.map(
        (weight, i) => share * (weight + (1 - share) * DENSE_SQUARE_WEIGHTS[i]!),
      );
      expect(Math.abs(sum(classical(within)) - right * share ** order)).toBeLessThan(ROUNDING);
    }
  });
});

describe('the stages', () => {
  it('look twice at the start and twice at the end, by the published sums α and γ', () => {
    for (const [i, sum] of [0, 0, 1, 1].entries()) expect(alphaSums[i]).toBeCloseTo(sum, 14);
    for (const [i, sum] of [1 / 2, 3 / 2, 0, 0].entries()) expect(gammaSums[i]).toBeCloseTo(sum, 14);
    expect(STAGE_WEIGHTS[1]!.every((weight) => weight === 0)).toBe(true);
  });

  it('add one after the other to the last trial state', () => {
    expect(STAGE_WEIGHTS[3]).toEqual([...STAGE_WEIGHTS[2]!, 1]);
    expect(SOLUTION_WEIGHTS).toEqual([...STAGE_WEIGHTS[3]!, 1]);
    expect(embeddedWeights).toEqual([...STAGE_WEIGHTS[3]!, 0]);
  });
});

describe('stability', () => {
  /** |R(z)| with R(z) = 1 + z bᵀ (I − z β)⁻¹ 1 by forward substitution; β is lower triangular. */
  function size(b: Vector, re: number, im: number): number {
    const k: { re: number; im: number }[] = [];
    const timesZ = (weights: Vector): { re: number; im: number } => {
      const x = k.reduce((sum, value, j) => sum + weights[j]! * value.re, 0);
      const y = k.reduce((sum, value, j) => sum + weights[j]! * value.im, 0);
      return { re: re * x - im * y, im: re * y + im * x };
    };
    for (const row of beta) {
      const { re: x, im: y } = timesZ(row);
      const [p, q] = [1 - GAMMA * re, -GAMMA * im];
      k.push({ re: ((1 + x) * p + y * q) / (p * p + q * q), im: (y * p - (1 + x) * q) / (p * p + q * q) });
    }
    const end = timesZ(b);
    return Math.hypot(1 + end.re, end.im);
  }

  it.each([
    ['the solution', solution],
    ['the embedded solution', embedded],
  ])('lets %s damp what is infinitely stiff, and grow nowhere on the imaginary axis', (_name, b) => {
    expect(size(b, -1e8, 0)).toBeLessThan(1e-6);
    for (let exponent = -3; exponent < 5; exponent += 0.02)
      expect(size(b, 0, 10 ** exponent)).toBeLessThan(1 + 1e-13);
  });
});

describe('steps', () => {
  /** y′ = x y² from y(0) = 1: y = 1/(1 − x²/2). Ends of so many equal steps to x = 1, of both solutions. */
  function errors(steps: number): { readonly solution: number; readonly embedded: number } {
    const h = 1 / steps;
    const exact = (x: number): number => 1 / (1 - x ** 2 / 2);
    let [x, y] = [0, 1];
    let worst = 0;
    for (let n = 0; n < steps; n += 1) {
      const u: number[] = [];
      const trial = (weights: Vector): number =>
        y + u.reduce((sum, value, j) => sum + weights[j]! * value, 0);
      for (const s of indices) {
        const state = trial(STAGE_WEIGHTS[s]!);
        const slope = (x + alphaSums[s]! * h) * state ** 2;
        const coupled = u.reduce((sum, value, j) => sum + STAGE_COUPLING[s]![j]! * value, 0);
        const drift = h * h * gammaSums[s]! * y ** 2;
        u.push((GAMMA * (h * slope + coupled + drift)) / (1 - h * GAMMA * 2 * x * y));
      }
      // Of one step from the exact solution the embedded one misses h³, and adds up to h².
      worst += Math.abs(dot(ERROR_WEIGHTS, u));
      y = trial(SOLUTION_WEIGHTS);
      x += h;
    }
    return { solution: Math.abs(y - exact(1)), embedded: worst };
  }

  it('show order 3, and the embedded solution order 2', () => {
    const [coarse, fine] = [errors(40), errors(80)];
    expect(Math.log2(coarse.solution / fine.solution)).toBeCloseTo(3, 0);
    expect(Math.log2(coarse.embedded / fine.embedded)).toBeCloseTo(2, 0);
  });
});
