/** It is sparing with air. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { FAR_OFF, lacking, type Condition } from './condition.ts';

export const air = kindOf({
  kind: 'air',
  doc: 'It takes no more than a flow of air, as ANR.',
  parameters: {
    at_most: quantity('volume flow', { min: 1e-6, max: 10 }, '120 L/min', 'The flow.'),
  },
  build: ({ at_most }, _context: null): Condition => ({
    get words() {
      return `takes at most ${formatQuantity(at_most, 'volume flow')} of air`;
    },
    margin: ({ values }) => (values.air === undefined ? FAR_OFF : lacking(1 - values.air / at_most)),
  }),
});
