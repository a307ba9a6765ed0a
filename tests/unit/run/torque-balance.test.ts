/** What pushes and what holds an engine at rest. */
import { expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { torqueBalance } from '../../../src/run/torque-balance.ts';
import { systemOf } from '../../support/drive.ts';
import { constantLoad, referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec({ load: constantLoad(2) }));

it('at dead centre the air does not push, and bearings, gear and load hold', () => {
  const { applied, holding } = torqueBalance(system, initialState(system, 0, 0));
  expect(Math.abs(applied)).toBe(0);
  expect(holding).toBeCloseTo(0.25 + 0.06 + 2, 12);
});

it('is asked as if the crank stood still, whatever its speed', () => {
  const turning = initialState(system, 1, 50);
  const standing = initialState(system, 1, 0);
  expect(torqueBalance(system, turning)).toEqual(torqueBalance(system, standing));
  expect(turning[SLOT.speed]).toBe(50);
});

it('pressure pushes forward on the way out and back on the way in', () => {
  const pushAt = (angle: number): number => {
    const y = initialState(system, angle, 0);
    y[system.slots.mass(1)]! *= 3;
    y[system.slots.energy(1)]! *= 3;
    return torqueBalance(system, y).applied;
  };
  expect(pushAt(1)).toBeGreaterThan(0);
  expect(pushAt(2 * Math.PI - 1)).toBeCloseTo(-pushAt(1), 9);
});
