/** All variations side by side: the first engine takes the first value of each, the second the second. */
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Variation } from '../variations/variation.ts';
import type { Sample } from './sample.ts';

export const list = kindOf({
  kind: 'list',
  doc: 'The first value of each variation together, then the second of each, and so on.',
  parameters: {},
  complaints: (_own, variations: readonly Variation[]): readonly Complaint[] => {
    const counts = variations.map(({ count }) => count);
    return new Set(counts).size <= 1
      ? []
      : [
          {
            path: [],
            expected: 'as many values for one variation as for the next',
            received: counts.join(', '),
          },
        ];
  },
  build: (_own, variations: readonly Variation[]): Sample => ({
    count: variations[0]?.count ?? 1,
    point: (engine) => variations.map(({ level }) => level(engine)),
  }),
});
