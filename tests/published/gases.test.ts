/** Every gas against the published values that it carries. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { gases } from '../../src/gas/registry.ts';
import { expectWithin } from '../support/expect-within.ts';
import { gasComplaints, propertyOf } from '../support/gas-property.ts';
import { helium } from '../support/helium.ts';

describe.each([...gases, helium])('$name', (gas) => {
  it.each(gas.checks)('$property at $at.temperature K is $expected ($source)', (check) => {
    expectWithin(propertyOf(gas, check), check.expected, check.tolerance);
  });

  it('proves its heat capacity, viscosity and Prandtl number', () => {
    expect(gasComplaints(gas)).toEqual([]);
  });
});

describe('a bad gas is found out', () => {
  it('when it has nothing to show', () => {
    expect(gasComplaints({ ...dryAir, checks: [] })).toHaveLength(3);
  });
  it('when a law is wrong', () => {
    expect(gasComplaints({ ...dryAir, viscosity: (t) => 1.02 * dryAir.viscosity(t) })[0]).toMatch(/viscosity/u);
  });
});
