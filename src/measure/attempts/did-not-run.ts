/** The engine was tried and did not go on running. */
import { optional, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { Attempt } from './attempt.ts';
import { entryParameters } from './entry-parameters.ts';

export const didNotRun = kindOf({
  kind: 'did not run',
  doc: 'The engine was tried and did not go on running.',
  parameters: {
    ...entryParameters,
    supply_pressure: optional(
      quantity('pressure', { min: 5e4, max: 3.1e6 }, '3 bar gauge', 'As in the scenario if not given.'),
    ),
  },
  build: (own, _context: unknown): Attempt => ({
    happened: 'did not run',
    what: own.what,
    when: own.when,
    changed: own.changed,
    conditions: { supplyPressure: own.supply_pressure },
  }),
});
