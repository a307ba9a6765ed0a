/** The searches for a best setting: what was tried so far, and where to try next. */
import { log2 } from '../numerics/elementary/logarithm.ts';
import { pow } from '../numerics/elementary/power.ts';
import { minimumBetween } from '../numerics/minimum.ts';
import { nelderMead } from '../numerics/nelder-mead.ts';
import { searchedLater } from '../numerics/search.ts';
import { mostSobolDimensions, sobolPoints } from '../numerics/sobol.ts';
import { score, type Aim } from './aims/aim.ts';
import type { Ask } from './ask.ts';
import { worstMargin, type Condition } from './conditions/condition.ts';
import type { EngineAnswer } from './engine-answer.ts';
import { settingsAt } from './plan.ts';
import { roundShare, type Variation } from './variations/variation.ts';

/** What is looked for, and where. */
export interface BestTask {
  readonly variations: readonly Variation[];
  readonly aim: Aim;
  readonly conditions: readonly Condition[];
  readonly mostEngines: number;
}

/** An engine that was tried. */
export interface Tried {
  readonly texts: readonly string[];
  /** Share of the way along each range; of words, their number. */
  readonly at: readonly number[];
  readonly answer: EngineAnswer;
  readonly holds: boolean;
  /** The higher the better; `undefined` for an engine that has nothing to show. */
  readonly score: number | undefined;
}

/** Steps of a walk through a whole range. */
export const WALK = 21;
/** Shares of a range that count as the same. */
export const CLOSE = 1 / 400;
const ROUND_PARTS = 500;
const BEYOND_ANY_SCORE = 1e9;

/** Everything that was tried. */
export interface Notebook {
  readonly task: BestTask;
  readonly ask: Ask;
  readonly known: Map<string, Tried>;
}

const textsAt = ({ task }: Notebook, at: readonly number[]): string[] =>
  task.variations.map((own, i) => (own.range ? own.at(at[i]!) : own.level(at[i]!)));

const rounded = ({ task }: Notebook, at: readonly number[]): number[] =>
  at.map((share, i) => {
    const { range } = task.variations[i]!;
    return range ? roundShare(range, share, ROUND_PARTS) : share;
  });

export async function tryAll(
  book: Notebook,
  points: readonly (readonly number[])[],
): Promise<readonly Tried[]> {
  const { task, ask, known } = book;
  const wanted = points.map((exact) => {
    const at = rounded(book, exact);
    const texts = textsAt(book, at);
    return { at, texts, key: texts.join('\n') };
  });
  const fresh = [
    ...new Map(wanted.filter(({ key }) => !known.has(key)).map((own) => [own.key, own])).values(),
  ];
  const answers = await ask(
    fresh.map(({ texts }) => [...settingsAt(task.variations, texts), ...task.aim.settings]),
  );
  fresh.forEach(({ at, texts, key }, i) => {
    const answer = answers[i]!;
    const holds = worstMargin(task.conditions, answer) >= 0;
    known.set(key, { at, texts, answer, holds, score: score(task.aim, answer) });
  });
  return wanted.map(({ key }) => known.get(key)!);
}

/** What the searches make small. */
function cost({ task }: Notebook, { holds, score: own, answer }: Tried): number {
  if (holds && own !== undefined) return -own;
  return BEYOND_ANY_SCORE * (1 - worstMargin(task.conditions, answer));
}

/** The ranges among all that varies, with everything else as it is. */
interface Space {
  readonly dimensions: number;
  /** A whole setting from the shares of the ranges, and back. */
  readonly whole: (shares: readonly number[]) => number[];
  readonly shares: (at: readonly number[]) => number[];
}

/** `fixed` has NaN for every range. */
function spaceOf(fixed: readonly number[]): Space {
  const free = fixed.flatMap((own, i) => (Number.isNaN(own) ? [i] : []));
  return {
    dimensions: free.length,
    whole: (shares) => fixed.map((own, i) => (Number.isNaN(own) ? shares[free.indexOf(i)]! : own)),
    shares: (at) => free.map((i) => at[i]!),
  };
}

/** From nothing: a first look everywhere, then on from the best of it. Whether it ended by itself. */
export async function searchEverywhere(
  book: Notebook,
  fixed: readonly number[],
  most: number,
): Promise<boolean> {
  const space = spaceOf(fixed);
  const looks = firstLook(space.dimensions, most - book.known.size);
  const looked = await tryAll(book, looks.map(space.whole));
  const costs = looked.map((own) => cost(book, own));
  const start = costs.indexOf(Math.min(...costs));
  if (space.dimensions === 0) return true;
  if (space.dimensions > 1) return simplexFrom(book, space, looks[start]!, [0.15, 0.05], most);
  const [low, high] = [looks[Math.max(0, start - 1)]![0]!, looks[Math.min(looks.length - 1, start + 1)]![0]!];
  await searchedLater(minimumBetween(low, high, CLOSE), async (share) => valueIn(book, space)([share]));
  return true;
}

/** On from something that was found by chance. */
export async function searchAround(book: Notebook, found: Tried): Promise<boolean> {
  const space = spaceOf(found.at.map((own, i) => (book.task.variations[i]!.range ? NaN : own)));
  return (
    space.dimensions < 2 || simplexFrom(book, space, space.shares(found.at), [0.05], book.task.mostEngines)
  );
}

const valueIn =
  (book: Notebook, space: Space) =>
  async (shares: readonly number[]): Promise<number> => {
    const [tried] = await tryAll(book, [space.whole(shares)]);
    return cost(book, tried!);
  };

/** One range is looked at in even steps, several by Sobol's points. */
function firstLook(dimensions: number, most: number): number[][] {
  if (dimensions === 0) return [[]];
  if (dimensions === 1) return Array.from({ length: WALK }, (_, i) => [i / (WALK - 1)]);
  const count = Math.max(4, Math.min(pow(2, Math.ceil(log2(12 * dimensions))), Math.floor(most / 3)));
  const point = sobolPoints(Math.min(dimensions, mostSobolDimensions));
  return Array.from({ length: count }, (_, n) => [...point(n + 1)]);
}

/** A simplex, and a smaller one from where it ended: the first may have closed too early. */
async function simplexFrom(
  book: Notebook,
  space: Space,
  start: readonly number[],
  sizes: readonly number[],
  most: number,
): Promise<boolean> {
  let from = start;
  let closed = false;
  for (const size of sizes) {
    const left = Math.floor(most - book.known.size);
    if (left <= from.length) return false;
    const search = nelderMead({
      start: from,
      low: from.map(() => 0),
      high: from.map(() => 1),
      step: from.map(() => size),
      tolerance: CLOSE,
      mostPoints: left,
    });
    const found = await searchedLater(search, valueIn(book, space));
    [from, closed] = [found.at, found.closed];
  }
  return closed;
}

export function bestOf(book: Notebook): Tried | undefined {
  const good = [...book.known.values()].filter(({ holds, score: own }) => holds && own !== undefined);
  return good.reduce<Tried | undefined>(
    (best, own) => (best === undefined || own.score! > best.score! ? own : best),
    undefined,
  );
}

export function closestOf(book: Notebook): { readonly closest?: Tried } {
  const margin = ({ answer }: Tried): number => worstMargin(book.task.conditions, answer);
  const [first, ...others] = book.known.values();
  return first
    ? { closest: others.reduce((best, own) => (margin(own) > margin(best) ? own : best), first) }
    : {};
}
