/** It starts by itself from enough positions of the crank. */
import { pureNumber } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { FAR_OFF, type Condition } from './condition.ts';

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`;

export const startsUnaided = kindOf({
  kind: 'starts unaided',
  doc: 'It starts without a push from no less than a share of all crank positions.',
  parameters: {
    from: pureNumber({ min: 0.01, max: 1, default: 1 }, '80 %', 'The share of positions.'),
  },
  build: ({ from }, _context: null): Condition => ({
    words: `starts unaided from at least ${percent(from)} of positions`,
    needs: 'starts',
    // Half a position more, so that exactly enough is on the good side.
    margin: ({ values: { startShare } }) =>
      startShare === undefined ? FAR_OFF : startShare / from - 1 + 1e-6,
  }),
});
