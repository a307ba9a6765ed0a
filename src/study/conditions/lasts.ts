/** A full receiver lasts long enough. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { FAR_OFF, type Condition } from './condition.ts';

export const lasts = kindOf({
  kind: 'lasts',
  doc: 'A full receiver keeps up the pressure for no less than a time; the scenario must describe a compressor.',
  parameters: {
    at_least: quantity('time', { min: 1, max: 1e6 }, '10 min', 'The time.'),
  },
  build: ({ at_least }, _context: null): Condition => ({
    words: `lasts at least ${formatQuantity(at_least, 'time')} from a full receiver`,
    margin: ({ values }) => (values.lasts === undefined ? FAR_OFF : Math.min(1, values.lasts / at_least - 1)),
  }),
});
