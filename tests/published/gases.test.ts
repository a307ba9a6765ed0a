/** Every gas against the published values that it carries; that it must carry some is part of its contract. */
import { describe, it } from 'vitest';
import { gases } from '../../src/gas/registry.ts';
import { expectWithin } from '../support/expect-within.ts';
import { propertyOf } from '../support/gas-property.ts';
import { helium } from '../support/helium.ts';

describe.each([...gases, helium])('$name', (gas) => {
  it.each(gas.checks)('$property at $at.temperature K is $expected ($source)', (check) => {
    expectWithin(propertyOf(gas, check), check.expected, check.tolerance);
  });
});
