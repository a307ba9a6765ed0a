/** Leak rates as they are published, against the leak that a timed fall of pressure gives. */
import { describe, expect, it } from 'vitest';
import { partContext } from '../../src/parts/engine-description.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { chosen } from '../support/chosen.ts';
import { decayed } from '../support/decaying-volume.ts';
import { expectWithin } from '../support/expect-within.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const context = partContext(referenceSpec());
const { gas, atmosphericPressure: ROOM } = context;
const LITRE = 1e-3;
const MBAR = 100;
const UNIVERSAL_GAS_CONSTANT = 8.314472;

/** Mass that the leak takes from a volume in the time of its test [kg]. */
function lostInTest(volume: number, drop: number, time: number, temperature: number): number {
  const to = ROOM + 2 * drop;
  const measured = { volume, from_pressure: to + drop, to_pressure: to, time, temperature };
  const passage = chosen(leaks, 'pressure decay', { between: 'cylinder to room', ...measured }).build(
    context,
  );
  return decayed(passage, { gas, volume, from: to + drop, against: ROOM, temperature }, time).lost;
}

describe('1 litre that loses 1 mbar in 1 s', () => {
  const zero = 273.15;
  const lost = lostInTest(LITRE, MBAR, 1, zero);
  /** p V of the lost air [Pa m³]. */
  const throughput = lost * gas.specificGasConstant * zero;

  it('leaks 1 mbar·l/s, which is 0.1 Pa·m³/s (definition)', () => {
    // liwo.com, "leak rate".
    expectWithin(throughput / (MBAR * LITRE), 1, 1e-6);
    expectWithin(throughput, 0.1, 1e-6);
  });

  it('leaks 59.2 cm³ a minute of air at 0 °C and 1013 mbar (seen)', () => {
    // liwo.com, "leak rate"; three figures.
    const density = 101_325 / (gas.specificGasConstant * zero);
    expect(((lost / density) * 60 * 1e6).toFixed(1)).toBe('59.2');
  });

  it('leaks 0.987 atm·cm³/s and 0.75 Torr·l/s (seen)', () => {
    // sonotecusa.com, FAQ on leak rates; three figures.
    expect((throughput / (101_325 * 1e-6)).toFixed(3)).toBe('0.987');
    expect((throughput / ((101_325 / 760) * LITRE)).toFixed(2)).toBe('0.75');
  });

  it('leaks as many sccm as 1 sccm = 1.68875e-3 Pa·m³/s makes it (seen)', () => {
    // semiconductor-tools.pages.dev, throughput converter; six figures.
    const sccm = ((lost * gas.specificGasConstant * zero) / 101_325) * 60 * 1e6;
    expectWithin(throughput / sccm, 1.68875e-3, 5e-6);
  });
});

it('2 litres that change by 25.3 kPa in 70 s at 20 °C leak 2.966e-4 mol/s in the mean (inputs seen)', () => {
  // 40 CFR 1065.644, vacuum-side leak check: 25 300 to 50 600 Pa; the regulation rounds to 0.00030 (from memory). Here the
  // same change of pressure is a fall.
  const molarMass = UNIVERSAL_GAS_CONSTANT / gas.specificGasConstant;
  const rate = lostInTest(2 * LITRE, 25_300, 70, 293.15) / molarMass / 70;
  expectWithin(rate, 2.966e-4, 1e-3);
  expectWithin(rate, 3.0e-4, 0.02);
});
