/** Engines spread evenly over all variations at once, by Sobol's sequence: few of them tell most about many settings. */
import { count } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { mostSobolDimensions, sobolPoints } from '../../numerics/sobol.ts';
import { randomFrom } from '../random.ts';
import type { Variation } from '../variations/variation.ts';
import type { Sample } from './sample.ts';

export const spaceFilling = kindOf({
  kind: 'space-filling',
  doc: 'Engines spread evenly over all variations at once.',
  parameters: {
    engines: count({ min: 1, max: 1_000_000 }, 'How many engines; powers of two fill the space most evenly.'),
    seed: count({ min: 0, max: 2_147_483_647, default: 1 }, 'Another number gives another sample.'),
  },
  complaints: (_own, variations: readonly Variation[]): readonly Complaint[] =>
    variations.length <= mostSobolDimensions
      ? []
      : [
          {
            path: [],
            expected: `at most ${mostSobolDimensions} variations`,
            received: `${variations.length}`,
          },
        ],
  build: ({ engines, seed }, variations: readonly Variation[]): Sample => {
    const random = randomFrom(seed);
    const shifts = variations.map(() => Math.floor(random() * 4_294_967_296));
    const share = sobolPoints(variations.length, shifts);
    return {
      count: engines,
      point: (engine) => share(engine).map((own, i) => variations[i]!.at(own)),
    };
  },
});
