/**
 * What attempt after attempt teaches: before each one the model foretells it with what is known so far, after it the
 * unknowns are put right (gaussian-knowledge.ts), straightened anew at the better value.
 */
import { independent, learned, varianceOf, type Knowledge, type StraightReading } from '../../numerics/gaussian-knowledge.ts';
import type { Setting } from '../../kinds/parameter.ts';
import { instruments } from '../engine-fit.ts';
import { settledAnswer, type RunningConditions, type SettledAnswer } from '../settled-answer.ts';
import type { EngineUnderTest } from '../test-context.ts';
import { settingsAt, unknownOf, type Unknown } from '../unknowns.ts';
import type { Attempt, MeasuredAttempt, RanAttempt } from './attempt.ts';

/** What is believed at a moment: guesses that may have been changed, and the logarithms about them. */
export interface Belief {
  readonly unknowns: readonly Unknown[];
  readonly knowledge: Knowledge;
}

export interface Chapter {
  readonly attempt: Attempt;
  /** By the scenario as drawn with the changes so far; `undefined` if it does not run, or nothing was run. */
  readonly asDrawn: SettledAnswer | undefined;
  /** With what had been learned before this attempt. */
  readonly asLearned: SettledAnswer | undefined;
  /** Standard deviation of that speed [rad/s], from what was not known then. */
  readonly doubt: number;
  readonly after: Belief;
}

export interface Story {
  readonly chapters: readonly Chapter[];
  readonly before: Belief;
  readonly after: Belief;
  /** All changes that hold at the end. */
  readonly changes: readonly Setting[];
}

const STEP = 0.05;

/** An engine with its changes and unknowns, and how it is reckoned. */
export interface Bench {
  readonly engine: EngineUnderTest;
  readonly room: NonNullable<RunningConditions['room']>;
}

export function answerWith(
  { engine, room }: Bench,
  settings: readonly Setting[],
  conditions: RunningConditions,
): SettledAnswer | undefined {
  const reading = engine.with(settings);
  return reading.ok ? settledAnswer(reading.spec, { ...conditions, room }) : undefined;
}

export interface Straightened {
  readonly answer: SettledAnswer;
  /** Of every instrument, for the logarithm of every unknown. */
  readonly slopes: Readonly<Record<keyof SettledAnswer, readonly number[]>>;
}

/** The model about some logarithms as a straight line; `undefined` where it does not run. */
export function straightened(
  bench: Bench,
  changes: readonly Setting[],
  { unknowns }: Belief,
  at: readonly number[],
  conditions: RunningConditions,
): Straightened | undefined {
  const answerAt = (p: readonly number[]): SettledAnswer | undefined =>
    answerWith(bench, [...changes, ...settingsAt(unknowns, p)], conditions);
  const answer = answerAt(at);
  const moved = at.map((value, i) => answerAt(at.with(i, value + STEP)));
  if (answer === undefined) return undefined;
  const slopesOf = (name: keyof SettledAnswer): number[] =>
    moved.map((own) => (own === undefined ? 0 : (own[name] - answer[name]) / STEP));
  return {
    answer,
    slopes: {
      speed: slopesOf('speed'),
      airFlow: slopesOf('airFlow'),
      exhaustTemperature: slopesOf('exhaustTemperature'),
    },
  };
}

export function firstBelief(guesses: readonly Setting[], guessedWithin: number): Belief {
  const unknowns = guesses.flatMap((setting) => unknownOf(setting) ?? []);
  const deviation = Math.log(guessedWithin) / 2;
  return {
    unknowns,
    knowledge: independent(
      unknowns.map(() => 0),
      unknowns.map(() => deviation),
    ),
  };
}

export function storyOf(bench: Bench, attempts: readonly Attempt[], before: Belief, guessedWithin: number): Story {
  let belief = before;
  let changes: readonly Setting[] = [];
  const chapters = attempts.map((attempt): Chapter => {
    changes = [...changes, ...attempt.changed];
    belief = attempt.changed.reduce((own, change) => afterChange(own, change, guessedWithin), belief);
    const own = chapterOf(bench, attempt, belief, changes);
    belief = own.after;
    return own;
  });
  return { chapters, before, after: belief, changes };
}

function chapterOf(bench: Bench, attempt: Attempt, belief: Belief, changes: readonly Setting[]): Chapter {
  if (attempt.happened === 'measured') return chapterOfTest(attempt, belief);
  return attempt.happened === 'ran'
    ? chapterOfRun(bench, attempt, belief, changes)
    : chapterOfStanding(bench, attempt, belief, changes);
}

/** A part that was made anew is known no better than a first guess. */
function afterChange(belief: Belief, change: Setting, guessedWithin: number): Belief {
  const index = belief.unknowns.findIndex(({ path }) => path === change.path.join('.'));
  const anew = index < 0 ? undefined : unknownOf(change);
  if (anew === undefined) return belief;
  const deviation = Math.log(guessedWithin) / 2;
  const { mean, covariance } = belief.knowledge;
  return {
    unknowns: belief.unknowns.with(index, anew),
    knowledge: {
      mean: mean.with(index, 0),
      covariance: covariance.map((row, i) =>
        row.map((own, k) => (i !== index && k !== index ? own : i === k ? deviation ** 2 : 0)),
      ),
    },
  };
}

function chapterOfTest(attempt: MeasuredAttempt, belief: Belief): Chapter {
  const readings = attempt.found.flatMap((setting): StraightReading[] => {
    const index = belief.unknowns.findIndex(({ path }) => path === setting.path.join('.'));
    const [own, value] = [belief.unknowns[index], unknownOf(setting)];
    if (own?.unit !== value?.unit || own === undefined || value === undefined) return [];
    return [
      {
        slope: belief.unknowns.map((_, i) => Number(i === index)),
        value: Math.log(value.guess / own.guess),
        error: Math.log(1 + attempt.within) / 2,
      },
    ];
  });
  const after = { ...belief, knowledge: learned(belief.knowledge, readings) };
  return { attempt, asDrawn: undefined, asLearned: undefined, doubt: 0, after };
}

function chapterOfStanding(
  bench: Bench,
  attempt: Extract<Attempt, { happened: 'did not run' }>,
  belief: Belief,
  changes: readonly Setting[],
): Chapter {
  const conditions = { ...attempt.conditions, near: bench.engine.spec.start.hand_speed };
  return {
    attempt,
    asDrawn: answerWith(bench, [...changes, ...asGuessed(belief)], conditions),
    asLearned: answerWith(bench, [...changes, ...settingsAt(belief.unknowns, belief.knowledge.mean)], conditions),
    doubt: 0,
    after: belief,
  };
}

const asGuessed = ({ unknowns }: Belief): Setting[] =>
  settingsAt(
    unknowns,
    unknowns.map(() => 0),
  );

function chapterOfRun(
  bench: Bench,
  attempt: RanAttempt,
  belief: Belief,
  changes: readonly Setting[],
): Chapter {
  const { knowledge } = belief;
  const first = straightened(bench, changes, belief, knowledge.mean, attempt.conditions);
  const asDrawn = answerWith(bench, [...changes, ...asGuessed(belief)], attempt.conditions);
  if (first === undefined) return { attempt, asDrawn, asLearned: undefined, doubt: 0, after: belief };
  const once = learned(knowledge, straightReadings(attempt, first, knowledge.mean));
  const second = straightened(bench, changes, belief, once.mean, attempt.conditions);
  const twice = second === undefined ? once : learned(knowledge, straightReadings(attempt, second, once.mean));
  return {
    attempt,
    asDrawn,
    asLearned: first.answer,
    doubt: Math.sqrt(varianceOf(knowledge.covariance, first.slopes.speed)),
    after: { ...belief, knowledge: twice },
  };
}

const straightReadings = (
  { read, errors }: RanAttempt,
  { answer, slopes }: Straightened,
  at: readonly number[],
): StraightReading[] =>
  instruments.flatMap((name) => {
    const value = read[name];
    if (value === undefined) return [];
    const slope = slopes[name];
    const there = slope.reduce((sum, own, i) => sum + own * at[i]!, 0);
    return [{ slope, value: value - answer[name] + there, error: errors[name] }];
  });
