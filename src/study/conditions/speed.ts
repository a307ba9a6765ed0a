/** It is fast enough. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { FAR_OFF, type Condition } from './condition.ts';

const RPM = (2 * Math.PI) / 60;

export const speed = kindOf({
  kind: 'speed',
  doc: 'It settles at no less than a speed.',
  parameters: {
    at_least: quantity('rotational speed', { min: 1 * RPM, max: 20_000 * RPM }, '200 rpm', 'The speed.'),
  },
  build: ({ at_least }, _context: null): Condition => ({
    words: `reaches at least ${formatQuantity(at_least, 'rotational speed')}`,
    margin: ({ values }) => (values.speed === undefined ? FAR_OFF : values.speed / at_least - 1),
  }),
});
