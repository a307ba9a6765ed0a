/**
 * The best setting within the ranges that vary. Engines spread over the whole space show where to begin; from the best of
 * them Brent's method (one range) or a simplex (several) goes on. An engine that fails a condition counts as worse than
 * any that meets them all, by as much as it fails. In the end each range is walked through at the best setting: the walk
 * shows whether the best lies on a bound or on a plateau, and if it comes upon something better the search goes on there.
 *
 * Words that vary are tried one after the other, each with the best of the ranges for it.
 */
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

/** The best setting with one of its values walked through its whole range. */
export interface Walk {
  readonly variation: Variation;
  readonly tried: readonly Tried[];
  /** The end that the best lies on. */
  readonly onBound?: 'from' | 'to';
  /** Ends of the stretch on which nothing changes by more than 1 %, where that is a good part of the range. */
  readonly flat?: { readonly from: string; readonly to: string };
}

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

const WALK = 21;
const FLAT_SHARE = 0.01;
const FLAT_STRETCH = 0.2;
const CLOSE = 1 / 400;
const ROUND_PARTS = 500;
const BEYOND_ANY_SCORE = 1e9;

interface Notebook {
  readonly task: BestTask;
  readonly ask: Ask;
  readonly known: Map<string, Tried>;
}

export async function bestSetting(task: BestTask, ask: Ask): Promise<Best> {
  const book: Notebook = { task, ask, known: new Map() };
  const words = task.variations.map(({ ramp, count }, i) =>
    ramp ? [] : Array.from({ length: count }, () => i),
  );
  let closed = true;
  for (const fixed of combinations(task.variations)) {
    const share =
      task.mostEngines /
      Math.max(
        1,
        words.reduce((all, own) => all * Math.max(1, own.length), 1),
      );
    closed = (await searchRanges(book, fixed, book.known.size + share)) && closed;
  }
  const best = bestOf(book);
  if (best === undefined) return { ...closestOf(book), walks: [], engines: book.known.size, closed };
  const walks = await Promise.all(task.variations.map((_, i) => walkAlong(book, best, i)));
  return { best: bestOf(book) ?? best, walks, engines: book.known.size, closed };
}

/** Numbers of the words, one for each variation that is no range; NaN stands for a range. */
function combinations(variations: readonly Variation[]): number[][] {
  return variations.reduce<number[][]>(
    (all, { ramp, count }) =>
      ramp
        ? all.map((own) => [...own, NaN])
        : all.flatMap((own) => Array.from({ length: count }, (_, i) => [...own, i])),
    [[]],
  );
}

const textsAt = ({ task }: Notebook, at: readonly number[]): string[] =>
  task.variations.map((own, i) => (own.ramp ? own.at(at[i]!) : own.level(at[i]!)));

const rounded = ({ task }: Notebook, at: readonly number[]): number[] =>
  at.map((share, i) => {
    const { ramp } = task.variations[i]!;
    return ramp ? roundShare(ramp, share, ROUND_PARTS) : share;
  });

async function tryAll(book: Notebook, points: readonly (readonly number[])[]): Promise<readonly Tried[]> {
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

/** Whether it ended by itself. */
async function searchRanges(book: Notebook, fixed: readonly number[], most: number): Promise<boolean> {
  const free = fixed.flatMap((own, i) => (Number.isNaN(own) ? [i] : []));
  const whole = (shares: readonly number[]): number[] =>
    fixed.map((own, i) => (Number.isNaN(own) ? shares[free.indexOf(i)]! : own));
  const value = async (shares: readonly number[]): Promise<number> => {
    const [tried] = await tryAll(book, [whole(shares)]);
    return cost(book, tried!);
  };
  if (free.length === 0) {
    await tryAll(book, [fixed]);
    return true;
  }
  const spread = firstLook(free.length, most - book.known.size);
  const looked = await tryAll(book, spread.map(whole));
  const costs = looked.map((own) => cost(book, own));
  const start = costs.indexOf(Math.min(...costs));
  if (free.length === 1) {
    const [low, high] = [
      spread[Math.max(0, start - 1)]![0]!,
      spread[Math.min(spread.length - 1, start + 1)]![0]!,
    ];
    await searchedLater(minimumBetween(low, high, CLOSE), (share) => value([share]));
    return true;
  }
  return simplexFrom(book, spread[start]!, value, most);
}

/** One range is looked at in even steps, several by Sobol's points and their corners. */
function firstLook(dimensions: number, most: number): number[][] {
  if (dimensions === 1) return Array.from({ length: WALK }, (_, i) => [i / (WALK - 1)]);
  const count = Math.max(4, Math.min(2 ** Math.ceil(Math.log2(12 * dimensions)), Math.floor(most / 3)));
  const point = sobolPoints(Math.min(dimensions, mostSobolDimensions));
  return Array.from({ length: count }, (_, n) => [...point(n + 1)]);
}

/** A simplex, and once more from where it ended: the first may have closed too early. */
async function simplexFrom(
  book: Notebook,
  start: readonly number[],
  value: (shares: readonly number[]) => Promise<number>,
  most: number,
): Promise<boolean> {
  let from = start;
  let closed = false;
  for (const size of [0.15, 0.05]) {
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
    const found = await searchedLater(search, value);
    [from, closed] = [found.at, found.closed];
  }
  return closed;
}

function bestOf(book: Notebook): Tried | undefined {
  const good = [...book.known.values()].filter(({ holds, score: own }) => holds && own !== undefined);
  return good.reduce<Tried | undefined>(
    (best, own) => (best === undefined || own.score! > best.score! ? own : best),
    undefined,
  );
}

function closestOf(book: Notebook): Pick<Best, 'closest'> {
  const margin = ({ answer }: Tried): number => worstMargin(book.task.conditions, answer);
  const [first, ...others] = book.known.values();
  return first
    ? { closest: others.reduce((best, own) => (margin(own) > margin(best) ? own : best), first) }
    : {};
}

async function walkAlong(book: Notebook, best: Tried, i: number): Promise<Walk> {
  const variation = book.task.variations[i]!;
  const steps = variation.ramp
    ? [...new Set([...Array.from({ length: WALK }, (_, n) => n / (WALK - 1)), best.at[i]!])].sort(
        (a, b) => a - b,
      )
    : Array.from({ length: variation.count }, (_, n) => n);
  const tried = await tryAll(
    book,
    steps.map((own) => best.at.with(i, own)),
  );
  return { variation, tried, ...(variation.ramp ? shapeOf(tried, best, i) : {}) };
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
