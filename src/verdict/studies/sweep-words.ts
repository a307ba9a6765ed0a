/** What many engines came to. */
import type { Measured } from '../../study/measures.ts';
import { listed, measureWords } from './measure-words.ts';
import type { StudyWords } from './study-words.ts';

/** One of many engines, as far as words and pictures need it. */
export interface SweptEngine {
  readonly texts: readonly string[];
  readonly outcome: string;
  readonly reason: string;
  /** Left out where the study has no conditions. */
  readonly holds: boolean | undefined;
  readonly values: Measured;
}

/** Engines by what became of them, and the best of those that will do. */
export interface SweepTally {
  readonly engines: number;
  readonly runs: number;
  readonly holds: number;
  readonly outcomes: ReadonlyMap<string, { readonly count: number; readonly first: SweptEngine }>;
  readonly fastest?: SweptEngine;
  readonly thriftiest?: SweptEngine;
}

/** Counts engines as they come. */
export function sweepTally(): {
  readonly add: (engine: SweptEngine) => void;
  readonly tally: () => SweepTally;
} {
  const outcomes = new Map<string, { count: number; readonly first: SweptEngine }>();
  let [engines, runs, holds] = [0, 0, 0];
  let fastest: SweptEngine | undefined;
  let thriftiest: SweptEngine | undefined;
  const add = (own: SweptEngine): void => {
    engines += 1;
    const known = outcomes.get(own.outcome);
    if (known) known.count += 1;
    else outcomes.set(own.outcome, { count: 1, first: own });
    if (own.outcome !== 'settled') return;
    runs += 1;
    if (own.holds === false) return;
    holds += 1;
    if ((own.values.speed ?? 0) > (fastest?.values.speed ?? 0)) fastest = own;
    if ((own.values.airPerWork ?? Infinity) < (thriftiest?.values.airPerWork ?? Infinity)) thriftiest = own;
  };
  const tally = (): SweepTally => ({
    engines,
    runs,
    holds,
    outcomes,
    ...(fastest ? { fastest } : {}),
    ...(thriftiest ? { thriftiest } : {}),
  });
  return { add, tally };
}

/** What one does, and what several do. */
const outcomeWords: Readonly<Record<string, readonly [one: string, several: string]>> = {
  stalled: ['stalls', 'stall'],
  'no-start': ['does not start', 'do not start'],
  'runs-backwards': ['runs backwards', 'run backwards'],
  'not-settled': ['has not settled in the time given', 'have not settled in the time given'],
  impossible: ['cannot be made', 'cannot be made'],
  'step-limit': ['could not be reckoned to the end', 'could not be reckoned to the end'],
  'non-finite': ['could not be reckoned to the end', 'could not be reckoned to the end'],
  'broken-off': ['broke this program off', 'broke this program off'],
};

function failure(outcome: string, count: number, example: string): string {
  const [one, several] = outcomeWords[outcome] ?? [outcome, outcome];
  return count === 1 ? `1 ${one}, ${example}` : `${count} ${several}, the first ${example}`;
}

function metText(conditions: readonly string[], holds: number): string {
  if (conditions.length === 0) return '';
  const asked = listed(conditions);
  return holds === 0
    ? `; none of them ${asked}`
    : `; ${holds} of them ${holds === 1 ? 'is' : 'are'} as asked: each ${asked}`;
}

/** What many engines came to, in words. */
export function sweepWords(
  paths: readonly string[],
  conditions: readonly string[],
  { engines, runs, holds, outcomes, fastest, thriftiest }: SweepTally,
): StudyWords {
  const settings = ({ texts }: SweptEngine): string =>
    listed(paths.map((path, i) => `${path} ${texts[i] ?? ''}`));
  const best = (words: string, name: 'speed' | 'airPerWork', own: SweptEngine | undefined): string[] => {
    const value = own?.values[name];
    return own === undefined || value === undefined
      ? []
      : [
          `${words}: ${measureWords[name].text(value)}${paths.length === 0 ? '' : `, with ${settings(own)}`}.`,
        ];
  };
  return {
    headline: `${runs} of ${engines} engines run${metText(conditions, holds)}.`,
    good: holds > 0,
    statements: [
      ...best('The fastest that will do', 'speed', fastest),
      ...best('The least air for its work', 'airPerWork', thriftiest),
      ...[...outcomes].flatMap(([outcome, { count, first }]) =>
        outcome === 'settled' ? [] : [failure(outcome, count, `with ${settings(first)}: ${first.reason}`)],
      ),
    ],
    figures: [],
  };
}
