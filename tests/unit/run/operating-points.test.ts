/** Where a torque curve meets its load, and how long the way there takes; by hand. */
import { describe, expect, it } from 'vitest';
import { operatingPoints, secondsBetween } from '../../../src/run/operating-points.ts';

const curve = (speed: readonly number[], torque: readonly number[]) => ({
  speed: Float64Array.from(speed),
  torque: Float64Array.from(torque),
  airMassFlow: new Float64Array(speed.length),
});
const load = { torque: (speed: number) => 1 + 0.1 * speed };

describe('operating points', () => {
  it('are where engine and load cross, one after the other, stable where the surplus falls', () => {
    // Surplus −1, 1, −3, −3: zero half way from 0 to 10, and a quarter of the way from 10 to 30.
    const points = operatingPoints(curve([0, 10, 30, 40], [0, 3, 1, 2]), load);
    expect(points).toEqual([
      { speed: 5, stable: false },
      { speed: 15, stable: true },
    ]);
  });

  it('are none where the engine is too weak or too strong all along', () => {
    expect(operatingPoints(curve([0, 10, 30], [0.9, 1.9, 3.9]), load)).toEqual([]);
    expect(operatingPoints(curve([0, 10, 30], [9, 9, 9]), load)).toEqual([]);
  });
});

describe('the time from one speed to another', () => {
  const idle = { torque: () => 0 };

  it('is ∫ J dω/T by trapezia over the speeds of the curve', () => {
    // Torque 4, 2, 2 at 10, 20, 30: from 15 on it is 3, so 0.4 (5/2.5 + 5/2).
    const slowing = curve([10, 20, 30], [4, 2, 2]);
    expect(secondsBetween(slowing, idle, 0.4, 15, 25)).toBeCloseTo(0.4 * (5 / 2.5 + 5 / 2), 12);
    expect(secondsBetween(slowing, idle, 0.4, 10, 20)).toBeCloseTo((0.4 * 10) / 3, 12);
    expect(secondsBetween(slowing, idle, 0.4, 12, 13)).toBeCloseTo(0.4 / 3.5, 12);
  });

  it('adds up', () => {
    const own = curve([0, 10, 20, 40], [6, 5, 5, 6]);
    const between = (from: number, to: number): number => secondsBetween(own, load, 1, from, to);
    expect(between(0, 10) + between(10, 40)).toBeCloseTo(between(0, 40), 12);
  });

  it('is without end past a speed at which nothing is left', () => {
    const weak = curve([0, 10, 20], [5, 0.5, 0.5]);
    expect(secondsBetween(weak, load, 1, 0, 20)).toBe(Infinity);
    expect(secondsBetween(weak, load, 1, 0, 4)).toBeLessThan(Infinity);
  });
});
