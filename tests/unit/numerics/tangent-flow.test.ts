/** The tangent of a flow along given steps, against flows that are known in closed form. */
import { describe, expect, it } from 'vitest';
import { TangentFlow } from '../../../src/numerics/tangent-flow.ts';

/** From 0 to `end` in equal steps, by a Jacobian that hangs on the place. */
function followed(
  dimension: number,
  coupled: readonly number[],
  { end, steps, jacobian }: { end: number; steps: number; jacobian: (x: number) => readonly number[] },
): Float64Array {
  const flow = new TangentFlow(dimension, coupled);
  flow.begin(Float64Array.from(jacobian(0)));
  for (let i = 1; i <= steps; i += 1) {
    flow.step(end / steps, Float64Array.from(jacobian((i * end) / steps)));
  }
  return flow.tangent();
}

describe('the tangent', () => {
  it('of a linear system is its exponential, and what adds up adds up', () => {
    // Component 1 adds up y₀ + y₂/2; the others are y₀′ = −y₀ + 2 y₂, y₂′ = −3 y₂.
    const tangent = followed(3, [0, 2], { end: 1, steps: 20, jacobian: () => [-1, 2, 1, 0.5, 0, -3] });
    const [slow, quick] = [Math.exp(-1), Math.exp(-3)];
    const exact = [
      ...[slow, slow - quick],
      ...[1 - slow, 1 - slow - (1 - quick) / 3 + (1 - quick) / 6],
      ...[0, quick],
    ];
    for (const [i, value] of exact.entries()) expect(Math.abs(tangent[i]! - value)).toBeLessThan(4e-4);
  });

  it('follows a Jacobian that changes: of y′ = −2xy it is e^(−x²)', () => {
    const [value] = followed(1, [0], { end: 1.5, steps: 30, jacobian: (x) => [-2 * x] });
    expect(Math.abs(value! / Math.exp(-2.25) - 1)).toBeLessThan(2e-3);
  });

  it('forgets within a step what dies out at once', () => {
    const [value] = followed(1, [0], { end: 1, steps: 1, jacobian: () => [-1e6] });
    expect(Math.abs(value!)).toBeLessThan(1e-5);
  });

  it('is no number where a step cannot be solved for', () => {
    const tangent = followed(1, [0], { end: 1, steps: 1, jacobian: () => [Infinity] });
    expect(tangent[0]).toBeNaN();
  });
});
