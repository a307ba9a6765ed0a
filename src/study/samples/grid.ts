/** Every value with every other; the last variation changes from one engine to the next. */
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Variation } from '../variations/variation.ts';
import type { Sample } from './sample.ts';

const MOST_ENGINES = 10_000_000;

const product = (variations: readonly Variation[]): number =>
  variations.reduce((all, { count }) => all * count, 1);

/** Values of a number in the mixed radix of the counts. */
function point(variations: readonly Variation[], engine: number): readonly string[] {
  let rest = engine;
  return variations
    .toReversed()
    .map(({ count, level }) => {
      const text = level(rest % count);
      rest = Math.floor(rest / count);
      return text;
    })
    .reverse();
}

export const grid = kindOf({
  kind: 'grid',
  doc: 'Every value with every other.',
  parameters: {},
  complaints: (_own, variations: readonly Variation[]): readonly Complaint[] =>
    product(variations) <= MOST_ENGINES
      ? []
      : [{ path: [], expected: `at most ${MOST_ENGINES} engines`, received: `${product(variations)}` }],
  build: (_own, variations: readonly Variation[]): Sample => ({
    count: product(variations),
    point: (engine) => point(variations, engine),
  }),
});
