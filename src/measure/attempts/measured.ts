/** A bench test found values of the scenario by themselves. */
import { pureNumber, settings } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { Attempt } from './attempt.ts';
import { entryParameters } from './entry-parameters.ts';

export const measured = kindOf({
  kind: 'measured',
  doc: 'A bench test found values of the scenario by themselves.',
  parameters: {
    ...entryParameters,
    found: settings({
      most: 5,
      needed: true,
      example: ['leaks.0.clearance', '24 um'],
      doc: 'Values of the scenario that the test found, by their paths.',
    }),
    within: pureNumber({ min: 1e-3, max: 2, default: 0.1 }, '10 %', 'How far they may be out, either way.'),
  },
  build: (own, _context: unknown): Attempt => ({
    happened: 'measured',
    what: own.what,
    when: own.when,
    changed: own.changed,
    found: own.found,
    within: own.within,
  }),
});
