import { describe, expect, it } from 'vitest';
import { broyden } from '../../../src/numerics/broyden.ts';

/** Steps until a map gives its argument back within 1e-10, from the origin. */
function stepsTo(map: (x: Float64Array) => Float64Array, size: number): { x: Float64Array; steps: number } {
  const solver = broyden(size);
  const x = new Float64Array(size);
  const residual = (): Float64Array => map(x).map((value, i) => value - x[i]!);
  let now = residual();
  for (let steps = 0; ; steps += 1) {
    if (now.every((value) => Math.abs(value) < 1e-10) || steps === 100) return { x, steps };
    const taken = solver.step(now).slice();
    for (let i = 0; i < size; i += 1) x[i]! += taken[i]!;
    now = residual();
    solver.learn(taken, now);
  }
}

describe("Broyden's method", () => {
  it('solves a linear map of n unknowns in 2n steps', () => {
    const rows = [
      [0.9, 0.2, 0],
      [-0.1, 0.3, 0.1],
      [0, 0.4, -0.5],
    ];
    const map = (x: Float64Array): Float64Array =>
      Float64Array.from(rows, (row, i) => i + 1 + row.reduce((sum, a, j) => sum + a * x[j]!, 0));
    const { x, steps } = stepsTo(map, 3);
    expect(steps).toBeLessThanOrEqual(7);
    expect(map(x)[0]).toBeCloseTo(x[0]!, 9);
  });

  it('finds cos x = x in a few steps, where the map itself takes fifty', () => {
    const { x, steps } = stepsTo((at) => at.map(Math.cos), 1);
    expect(x[0]).toBeCloseTo(0.7390851332151607, 10);
    expect(steps).toBeLessThanOrEqual(7);
  });

  it('learns nothing from a step that was not felt', () => {
    const solver = broyden(1);
    const step = solver.step(Float64Array.of(1)).slice();
    solver.learn(step, Float64Array.of(1));
    expect(solver.step(Float64Array.of(1))[0]).toBe(1);
  });
});
