/**
 * The best setting within the ranges that vary. Engines spread over the whole space show where to begin; from the best of
 * them Brent's method (one range) or a simplex (several) goes on. An engine that fails a condition counts as worse than
 * any that meets them all, by as much as it fails. In the end each range is walked through at the best setting: the walk
 * shows whether the best lies on a bound or on a plateau, and if it comes upon something better the search goes on there.
 *
 * Words that vary are tried one after the other, each with the best of the ranges for it.
 */
import type { Ask } from './ask.ts';
import {
  bestOf,
  CLOSE,
  closestOf,
  searchAround,
  searchEverywhere,
  tryAll,
  WALK,
  type BestTask,
  type Notebook,
  type Tried,
} from './best-search.ts';
import type { Variation } from './variations/variation.ts';

/** The best setting with one of its values walked through its whole range. */
export interface Walk {
  readonly variation: Variation;
  readonly tried: readonly Tried[];
  /** The end that the best lies on. */
  readonly onBound?: 'from' | 'to';
  /** Ends of the stretch on which nothing changes by more than 1 %, where that is a good part of the range. */
  readonly flat?: { readonly from: string; readonly to: string };
}

/** What the search for the best setting found. */
export interface Best {
  /** None when no engine meets the conditions. */
  readonly best?: Tried;
  /** The one that comes closest to meeting the conditions when none does. */
  readonly closest?: Tried;
  readonly walks: readonly Walk[];
  readonly engines: number;
  /** Whether the search ended by itself, not because as many engines as allowed were tried. */
  readonly closed: boolean;
}

const FLAT_SHARE = 0.01;
const FLAT_STRETCH = 0.2;
const MOST_ROUNDS = 3;

/** Searches the ranges of a task for its best setting. */
export async function bestSetting(task: BestTask, ask: Ask): Promise<Best> {
  const book: Notebook = { task, ask, known: new Map() };
  const all = combinations(task.variations);
  let closed = true;
  for (const fixed of all)
    closed = (await searchEverywhere(book, fixed, book.known.size + task.mostEngines / all.length)) && closed;
  let best = bestOf(book);
  if (best === undefined) return { ...closestOf(book), walks: [], engines: book.known.size, closed };
  let walks = await walksAround(book, best);
  // A walk may come upon something better: look around there, and walk from there.
  for (let round = 1; round < MOST_ROUNDS && bestOf(book) !== best; round += 1) {
    closed = await searchAround(book, bestOf(book)!);
    best = bestOf(book)!;
    walks = await walksAround(book, best);
  }
  return { best, walks, engines: book.known.size, closed };
}

const walksAround = (book: Notebook, best: Tried): Promise<readonly Walk[]> =>
  Promise.all(book.task.variations.map((_, i) => walkAlong(book, best, i)));

/** Numbers of the words, one for each variation that is no range; NaN stands for a range. */
function combinations(variations: readonly Variation[]): number[][] {
  return variations.reduce<number[][]>(
    (all, { range, count }) =>
      range
        ? all.map((own) => [...own, NaN])
        : all.flatMap((own) => Array.from({ length: count }, (_, i) => [...own, i])),
    [[]],
  );
}

async function walkAlong(book: Notebook, best: Tried, i: number): Promise<Walk> {
  const variation = book.task.variations[i]!;
  const steps = variation.range
    ? [...new Set([...Array.from({ length: WALK }, (_, n) => n / (WALK - 1)), best.at[i]!])].sort(
        (a, b) => a - b,
      )
    : Array.from({ length: variation.count }, (_, n) => n);
  const tried = await tryAll(
    book,
    steps.map((own) => best.at.with(i, own)),
  );
  return { variation, tried, ...(variation.range ? shapeOf(tried, best, i) : {}) };
}

/** Whether the best lies on an end of its range, and how far one may go from it without losing 1 %. */
function shapeOf(tried: readonly Tried[], best: Tried, i: number): Pick<Walk, 'onBound' | 'flat'> {
  const least = best.score! - FLAT_SHARE * Math.abs(best.score!);
  const good = tried.map((own) => own.holds && own.score !== undefined && own.score >= least);
  const steps = tried.map((own) => own.at[i]!);
  const at = steps.indexOf(best.at[i]!);
  const first = good.lastIndexOf(false, at) + 1;
  const after = good.indexOf(false, at);
  const last = after < 0 ? good.length - 1 : after - 1;
  const wide = steps[last]! - steps[first]! >= FLAT_STRETCH;
  const share = best.at[i]!;
  return {
    ...(share < CLOSE * 2 ? { onBound: 'from' } : share > 1 - CLOSE * 2 ? { onBound: 'to' } : {}),
    ...(wide ? { flat: { from: tried[first]!.texts[i]!, to: tried[last]!.texts[i]! } } : {}),
  };
}
