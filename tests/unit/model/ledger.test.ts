/** The comparison of two states: what the residuals say about made-up ones. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { kineticEnergy, ledgerResiduals, resetTotals } from '../../../src/model/ledger.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { systemOf } from '../../support/drive.ts';
import { inertia, referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec({ flywheel: inertia(2), cylinder: { reciprocating_mass: 0 } }));
const { slots } = system;
const before = initialState(system, 1, 10);
const [HOSE, ADMISSION, EXHAUST] = [0, 1, 2];

describe('the residuals', () => {
  it('of a run in which nothing happened are zero', () => {
    expect(ledgerResiduals(system, before, before.slice(), 1)).toEqual({ mass: 0, energy: 0 });
  });

  it('of air that came in by the hose and stayed are zero', () => {
    const after = before.slice();
    after[slots.passageMass(HOSE)] = 1e-5;
    after[slots.enthalpyIn] = 3;
    after[slots.mass(0)]! += 1e-5;
    after[slots.energy(0)]! += 3;
    const { mass, energy } = ledgerResiduals(system, before, after, 1);
    expect(mass).toBeLessThan(1e-12);
    expect(energy).toBeLessThan(1e-12);
  });

  it('of air that only went from chest to cylinder are zero', () => {
    const after = before.slice();
    after[slots.passageMass(ADMISSION)] = 1e-5;
    after[slots.mass(0)]! -= 1e-5;
    after[slots.mass(1)]! += 1e-5;
    expect(ledgerResiduals(system, before, after, 1).mass).toBeLessThan(1e-12);
  });

  it('of air that left by the exhaust are zero', () => {
    const after = before.slice();
    after[slots.passageMass(EXHAUST)] = 1e-5;
    after[slots.enthalpyIn] = -3;
    after[slots.mass(1)]! -= 1e-5;
    after[slots.energy(1)]! -= 3;
    const { mass, energy } = ledgerResiduals(system, before, after, 1);
    expect(mass).toBeLessThan(1e-9);
    expect(energy).toBeLessThan(1e-9);
  });

  it('of air out of nowhere are its share of what went through', () => {
    const after = before.slice();
    after[slots.passageMass(HOSE)] = 1e-5;
    after[slots.mass(0)]! += 1.1e-5;
    expect(ledgerResiduals(system, before, after, 1).mass).toBeCloseTo(0.1, 9);
  });

  it('of speed out of nowhere are felt in the energy', () => {
    const after = before.slice();
    after[SLOT.speed] = 11;
    expect(ledgerResiduals(system, before, after, 1).energy).toBeCloseTo(1, 9);
  });

  it('of a speed that is off by less than a rounding for each step are zero', () => {
    const after = before.slice();
    after[SLOT.speed]! *= 1 + 1e-12;
    expect(ledgerResiduals(system, before, after, 1000).energy).toBeGreaterThan(0.5);
    expect(ledgerResiduals(system, before, after, 10_000).energy).toBe(0);
  });

  it('of speed that the weight of the pistons gave are zero', () => {
    const after = before.slice();
    after[SLOT.speed] = 11;
    after[slots.gravityWork] = 21;
    expect(ledgerResiduals(system, before, after, 1).energy).toBeLessThan(1e-12);
  });

  it('of work that a bearing took from the flywheel are zero', () => {
    const after = before.slice();
    after[SLOT.speed] = 9;
    after[slots.bearingWork] = 19;
    expect(ledgerResiduals(system, before, after, 1).energy).toBeLessThan(1e-12);
  });
});

describe('the totals', () => {
  it('are set back without touching the rest', () => {
    const y = before.slice().fill(7, slots.firstTotal);
    resetTotals(system, y);
    expect(y.subarray(0, slots.firstTotal)).toEqual(before.subarray(0, slots.firstTotal));
    expect(y.subarray(slots.firstTotal).every((total) => total === 0)).toBe(true);
  });
});

it('the kinetic energy is half the inertia times the speed squared', () => {
  expect(kineticEnergy(system, before)).toBeCloseTo(100, 12);
});
