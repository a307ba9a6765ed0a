import { describe, expect, it } from 'vitest';
import { differenceJacobian, type Evaluation } from '../../../src/numerics/difference-jacobian.ts';

interface Asked {
  readonly slopesOf: (y: Float64Array) => readonly number[];
  readonly y: readonly number[];
  readonly columns: readonly number[];
  readonly size?: number;
}

function jacobianOf({ slopesOf, y, columns, size = 0 }: Asked): {
  readonly culprit: number;
  readonly jacobian: Float64Array;
  readonly state: Float64Array;
  readonly seen: readonly Float64Array[];
} {
  const seen: Float64Array[] = [];
  const evaluate: Evaluation = (state, slopes) => {
    seen.push(state.slice());
    slopes.set(slopesOf(state));
    return slopes.findIndex((slope) => !Number.isFinite(slope));
  };
  const n = y.length;
  const state = Float64Array.from(y);
  const jacobian = new Float64Array(n * columns.length);
  const tools = {
    evaluate,
    columns: Int32Array.from(columns),
    sizes: new Float64Array(n).fill(size),
    scratch: new Float64Array(n),
  };
  const slopes = Float64Array.from(slopesOf(state));
  const culprit = differenceJacobian(tools, state, slopes, jacobian);
  return { culprit, jacobian, state, seen };
}

const mixed = (y: Float64Array): readonly number[] => [y[0]! * y[1]!, Math.sin(y[0]!) + y[2]!, y[1]! ** 2];

describe('the Jacobian by differences', () => {
  it('has a row for each slope and a column for each component asked for', () => {
    const { jacobian, seen } = jacobianOf({ slopesOf: mixed, y: [2, 3, 5], columns: [0, 1] });
    for (const [i, value] of [3, 2, Math.cos(2), 0, 0, 6].entries())
      expect(jacobian[i]).toBeCloseTo(value, 6);
    expect(seen).toHaveLength(2);
  });

  it('leaves the state as it was', () => {
    const { state } = jacobianOf({ slopesOf: mixed, y: [2, 3, 5], columns: [0, 1, 2] });
    expect([...state]).toEqual([2, 3, 5]);
  });

  it('looks ahead: on the side to which a component moves', () => {
    const kinked = (y: Float64Array): readonly number[] => [1 + Math.abs(y[0]!), -1 + Math.abs(y[1]!)];
    const { jacobian } = jacobianOf({ slopesOf: kinked, y: [0, 0], columns: [0, 1] });
    expect([jacobian[0], jacobian[3]]).toEqual([1, -1]);
  });

  it('moves a small component by its size, not by its value', () => {
    const { seen } = jacobianOf({ slopesOf: () => [0], y: [0], columns: [0], size: 1e-9 });
    expect(seen[0]![0]).toBe(1e-9 * 2 ** -26);
  });

  it('names the component whose slope is not finite', () => {
    const broken = (y: Float64Array): readonly number[] => [1, y[0] === 1 ? 1 : NaN];
    const { culprit, state } = jacobianOf({ slopesOf: broken, y: [1, 1], columns: [0] });
    expect(culprit).toBe(1);
    expect([...state]).toEqual([1, 1]);
  });
});
