/**
 * Conductances in a row as one: against a row solved pressure by pressure, and the rule of effective areas,
 * 1/S² = Σ 1/S², as a rough comparison.
 */
import { describe, expect, it } from 'vitest';
import { conductanceFlow, type Conductance } from '../../src/gas/conductance.ts';
import { conductanceInSeries } from '../../src/gas/conductance-series.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { areaInSeries } from '../../src/gas/nozzle.ts';
import { expectWithin } from '../support/expect-within.ts';

const T = 293.15;
const element = (sonicConductance: number, criticalPressureRatio: number): Conductance => ({
  sonicConductance,
  criticalPressureRatio,
});

/** A gas without rounding at equal pressures. */
const gas = { ...dryAir, equalPressureRounding: 0 };

/** Flow [kg/s] through two elements from p₁ to p₂, by bisection for the pressure between them. */
function flowThrough(first: Conductance, second: Conductance, p1: number, p2: number): number {
  let [low, high] = [p2, p1];
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2;
    if (conductanceFlow(gas, first, p1, T, middle) > conductanceFlow(gas, second, middle, T, p2))
      low = middle;
    else high = middle;
  }
  return conductanceFlow(gas, second, low, T, p2);
}

/** Largest flow whatever lies behind the row, as a conductance. */
const chokedBySolving = (first: Conductance, second: Conductance): number =>
  flowThrough(first, second, 7e5, 1) / conductanceFlow(gas, element(1, 0.5), 7e5, T, 1);

const pairs: [string, Conductance, Conductance][] = [
  ['two equal ones', element(2e-8, 0.3), element(2e-8, 0.3)],
  ['a hose and a narrow fitting', element(4e-8, 0.25), element(1e-8, 0.5)],
  ['a narrow fitting and a hose', element(1e-8, 0.5), element(4e-8, 0.25)],
  ['two that differ little', element(2e-8, 0.45), element(2.4e-8, 0.2)],
];

describe.each(pairs)('%s in a row', (_name, first, second) => {
  const row = conductanceInSeries([first, second]);

  it('choke at the flow that a solution pressure by pressure gives', () => {
    expectWithin(row.sonicConductance, chokedBySolving(first, second), 1e-9);
  });

  it('begin to choke at the critical pressure ratio', () => {
    const flow = (ratio: number): number => flowThrough(first, second, 7e5, ratio * 7e5);
    const choked = flow(0.01);
    expectWithin(flow(0.999 * row.criticalPressureRatio), choked, 1e-9);
    expect(flow(1.02 * row.criticalPressureRatio)).toBeLessThan((1 - 1e-6) * choked);
  });

  it('pass nearly what the solution gives where they do not choke', () => {
    // The ellipse of the row stands in for two ellipses; they agree at its ends only.
    for (const ratio of [0.5, 0.7, 0.85, 0.95, 0.99]) {
      const solved = flowThrough(first, second, 7e5, ratio * 7e5);
      expectWithin(conductanceFlow(gas, row, 7e5, T, ratio * 7e5), solved, 0.05);
    }
  });
});

describe('a row', () => {
  it('of one is that one', () => {
    const [alone, own] = [element(2e-8, 0.35), conductanceInSeries([element(2e-8, 0.35)])];
    expectWithin(own.sonicConductance, alone.sonicConductance, 1e-12);
    expectWithin(own.criticalPressureRatio, alone.criticalPressureRatio, 1e-6);
  });

  it('with one that is far narrower passes what that one passes', () => {
    for (const row of [
      [element(1e-9, 0.4), element(1e-6, 0.3)],
      [element(1e-6, 0.3), element(1e-9, 0.4)],
    ])
      expectWithin(conductanceInSeries(row).sonicConductance, 1e-9, 1e-5);
  });

  it('passes less than its narrowest element, and less with every one more', () => {
    const rows = [1, 2, 3, 6].map((count) => Array.from({ length: count }, () => element(2e-8, 0.5)));
    const together = rows.map((row) => conductanceInSeries(row));
    for (const [i, more] of together.slice(1).entries()) {
      expect(more.sonicConductance).toBeLessThan(together[i]!.sonicConductance);
      expect(more.criticalPressureRatio).toBeLessThan(together[i]!.criticalPressureRatio);
    }
  });
});

describe('effective areas in series', () => {
  it('two of 10 mm² are one of 7.071 mm² (rule seen, number derived)', () => {
    expectWithin(areaInSeries(10e-6, 10e-6), 7.071e-6, 1e-4);
  });

  it('the rule is roughly true of conductances', () => {
    // The rule knows nothing of density falling along the row: two equal elements pass up to a sixth more.
    for (const b of [0.2, 0.35, 0.5]) {
      const { sonicConductance } = conductanceInSeries([element(2e-8, b), element(2e-8, b)]);
      expectWithin(sonicConductance, 2e-8 / Math.SQRT2, 0.2);
    }
  });
});
