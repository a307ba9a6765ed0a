/**
 * How far one value may go while all conditions hold. A walk through the whole range shows where they hold at all; the
 * last step between holding and failing is then narrowed down by the root of the worst margin, or by halving where an
 * engine simply stops running. What lies between two steps of the walk is not seen.
 */
import { root } from '../numerics/root.ts';
import type { Ask } from './ask.ts';
import { worstMargin, type Condition } from './conditions/condition.ts';
import type { EngineAnswer } from './engine-answer.ts';
import { settingsAt } from './plan.ts';
import { searchedLater } from '../numerics/search.ts';
import { rangeBetween, rangeOf } from './variations/range.ts';
import { roundPart, roundShare, type Ramp, type Variation } from './variations/variation.ts';

/** Which value, where to look, and what has to hold. */
export interface LimitTask {
  readonly paths: readonly string[];
  readonly ramp: Ramp;
  readonly wanted: 'largest' | 'smallest';
  readonly conditions: readonly Condition[];
}

export interface Probe {
  readonly value: number;
  readonly text: string;
  readonly answer: EngineAnswer;
  /** Of the condition that is hardest to meet; at zero or above all hold. */
  readonly margin: number;
}

/** How far a value may go. */
export interface Limit {
  readonly variation: Variation;
  /** In the order of the value. */
  readonly probes: readonly Probe[];
  /** The outermost value found for which all conditions hold; none when they hold nowhere. */
  readonly holds?: Probe;
  /** The next value beyond, for which they do not; none when they hold right to the end of the range. */
  readonly fails?: Probe;
  /** The condition that gives way there, by its number; `undefined` when the engine does not even run. */
  readonly givesWay?: number;
  /** Whether there are values short of the limit for which they fail. */
  readonly gaps: boolean;
}

const WALK = 17;
const ROUND_PARTS = 2000;

/** Finds how far a value may go while all conditions hold. */
export async function limitOf(task: LimitTask, ask: Ask): Promise<Limit> {
  const range = rangeBetween(task.ramp, 'even');
  const variation = rangeOf(task.paths, task.ramp, WALK);
  const probesAt = async (shares: readonly number[]): Promise<readonly Probe[]> => {
    const round = shares.map((share) => roundShare(range, share, ROUND_PARTS));
    const texts = round.map((share) => variation.at(share));
    const answers = await ask(texts.map((text) => settingsAt([variation], [text])));
    return answers.map((answer, i) => probe(task, round[i]!, texts[i]!, answer));
  };
  const steps = Array.from({ length: WALK }, (_, i) => i / (WALK - 1));
  const walked = await probesAt(steps);
  const outward = (task.wanted === 'largest') === task.ramp.to > task.ramp.from ? [0, 1] : [1, 0];
  const order = outward[0] === 0 ? walked : walked.toReversed();
  const inOrder = (probes: readonly Probe[]): Probe[] => probes.toSorted((a, b) => a.value - b.value);
  const last = order.findLastIndex(({ margin }) => margin >= 0);
  const [inner, outer] = [order[last], order[last + 1]];
  if (inner === undefined) return { variation, probes: inOrder(walked), gaps: false };
  const gaps = order.slice(0, last).some(({ margin }) => margin < 0);
  if (outer === undefined) return { variation, probes: inOrder(walked), holds: inner, gaps };
  const narrowed = [inner, outer];
  const { from, to } = task.ramp;
  const shareOf = ({ value }: Probe): number => (value - from) / (to - from);
  const bracket = {
    a: shareOf(inner),
    b: shareOf(outer),
    valueAtA: inner.margin || Number.MIN_VALUE,
    valueAtB: outer.margin,
  };
  await searchedLater(root(bracket, part(task.ramp)), async (share) => {
    const [found] = await probesAt([share]);
    narrowed.push(found!);
    return found!.margin || Number.MIN_VALUE;
  });
  const away = (own: Probe): number => Math.abs(own.value - inner.value);
  const fails = narrowed.filter(({ margin }) => margin < 0).reduce((a, b) => (away(b) < away(a) ? b : a));
  const holding = narrowed.filter((own) => own.margin >= 0 && away(own) < away(fails));
  const holds = holding.reduce((a, b) => (away(b) > away(a) ? b : a));
  const givesWay = weakest(task, fails.answer);
  return {
    variation,
    probes: inOrder([...walked, ...narrowed.slice(2)]),
    holds,
    fails,
    ...(givesWay === undefined ? {} : { givesWay }),
    gaps,
  };
}

/** As a share of the range, how finely a value is worth telling. */
const part = (ramp: Ramp): number => roundPart(ramp, ROUND_PARTS) / Math.abs(ramp.to - ramp.from);

function probe({ ramp, conditions }: LimitTask, share: number, text: string, answer: EngineAnswer): Probe {
  return {
    value: ramp.from + share * (ramp.to - ramp.from),
    text,
    answer,
    margin: worstMargin(conditions, answer),
  };
}

function weakest({ conditions }: LimitTask, answer: EngineAnswer): number | undefined {
  if (answer.outcome !== 'settled') return undefined;
  const margins = conditions.map((condition) => condition.margin(answer));
  const worst = margins.indexOf(Math.min(...margins));
  return worst < 0 ? undefined : worst;
}
