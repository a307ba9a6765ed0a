/**
 * What attempt after attempt teaches: before each one the model foretells it with what is known so far, after it the
 * unknowns are put right (gaussian-knowledge.ts). The model is straightened anew at the better values, for this attempt and
 * the latest before it, until they stand still: what was far off at first would otherwise leave its mark for good.
 */
import { log } from '../../numerics/elementary/logarithm.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import {
  independent,
  learned,
  varianceOf,
  type Knowledge,
  type StraightReading,
} from '../../numerics/gaussian-knowledge.ts';
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

function answerWith(
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
  const deviation = log(guessedWithin) / 2;
  return {
    unknowns,
    knowledge: independent(
      unknowns.map(() => 0),
      unknowns.map(() => deviation),
    ),
  };
}

export function storyOf(
  bench: Bench,
  attempts: readonly Attempt[],
  before: Belief,
  guessedWithin: number,
): Story {
  let memory: Memory = { anchor: before, lessons: [], belief: before };
  let changes: readonly Setting[] = [];
  const chapters = attempts.map((attempt): Chapter => {
    changes = [...changes, ...attempt.changed];
    const belief = attempt.changed.reduce(
      (own, change) => afterChange(own, change, guessedWithin),
      memory.belief,
    );
    if (belief !== memory.belief) memory = { anchor: belief, lessons: [], belief };
    const foretold = foretell(bench, attempt, belief, changes);
    const { asDrawn, asLearned, doubt } = foretold;
    const lesson = lessonOf(attempt, belief, changes, foretold);
    if (lesson !== undefined) memory = remember(bench, memory, lesson);
    return { attempt, asDrawn, asLearned, doubt, after: memory.belief };
  });
  return { chapters, before, after: memory.belief, changes };
}

/** What one attempt says about the unknowns as they are since the last of them was made anew. */
interface Lesson {
  /** Of a run: it can be straightened anew. */
  readonly run?: { readonly attempt: RanAttempt; readonly changes: readonly Setting[] };
  readonly readings: readonly StraightReading[];
}

interface Memory {
  /** What was believed before the first of the lessons. */
  readonly anchor: Belief;
  readonly lessons: readonly Lesson[];
  readonly belief: Belief;
}

/** So many of the latest lessons are straightened anew, and so often at most. */
const LATEST = 6;
const PASSES = 3;
/** Standard deviations that a mean may still move by. */
const STANDS = 0.1;

function remember(bench: Bench, { anchor, lessons: earlier }: Memory, lesson: Lesson): Memory {
  let lessons: readonly Lesson[] = [...earlier, lesson];
  const taught = (): Knowledge =>
    learned(
      anchor.knowledge,
      lessons.flatMap(({ readings }) => readings),
    );
  let knowledge = taught();
  for (let pass = 0; pass < PASSES; pass += 1) {
    const { mean } = knowledge;
    const fresh = lessons.length - LATEST;
    lessons = lessons.map((own, i) => (i < fresh ? own : straightenedAnew(bench, anchor, own, mean)));
    knowledge = taught();
    const { covariance } = knowledge;
    const moved = knowledge.mean.map((own, i) => Math.abs(own - mean[i]!) / Math.sqrt(covariance[i]![i]!));
    if (Math.max(...moved) < STANDS) break;
  }
  return { anchor, lessons, belief: { ...anchor, knowledge } };
}

function straightenedAnew(bench: Bench, belief: Belief, own: Lesson, at: readonly number[]): Lesson {
  if (own.run === undefined) return own;
  const { attempt, changes } = own.run;
  const line = straightened(bench, changes, belief, at, attempt.conditions);
  return line === undefined ? own : { ...own, readings: straightReadings(attempt, line, at) };
}

/** A part that was made anew is known no better than a first guess. */
function afterChange(belief: Belief, change: Setting, guessedWithin: number): Belief {
  const index = belief.unknowns.findIndex(({ path }) => path === change.path.join('.'));
  const anew = index < 0 ? undefined : unknownOf(change);
  if (anew === undefined) return belief;
  const deviation = log(guessedWithin) / 2;
  const { mean, covariance } = belief.knowledge;
  return {
    unknowns: belief.unknowns.with(index, anew),
    knowledge: {
      mean: mean.with(index, 0),
      covariance: covariance.map((row, i) =>
        row.map((own, k) => (i !== index && k !== index ? own : i === k ? square(deviation) : 0)),
      ),
    },
  };
}

type Foretold = Pick<Chapter, 'asDrawn' | 'asLearned' | 'doubt'> & { readonly line?: Straightened };

function foretell(bench: Bench, attempt: Attempt, belief: Belief, changes: readonly Setting[]): Foretold {
  if (attempt.happened === 'measured') return { asDrawn: undefined, asLearned: undefined, doubt: 0 };
  const { unknowns, knowledge } = belief;
  const conditions = { near: bench.engine.spec.start.hand_speed, ...attempt.conditions };
  const guessed = settingsAt(
    unknowns,
    unknowns.map(() => 0),
  );
  const asDrawn = answerWith(bench, [...changes, ...guessed], conditions);
  if (attempt.happened === 'did not run') {
    const known = settingsAt(unknowns, knowledge.mean);
    return { asDrawn, asLearned: answerWith(bench, [...changes, ...known], conditions), doubt: 0 };
  }
  const line = straightened(bench, changes, belief, knowledge.mean, conditions);
  if (line === undefined) return { asDrawn, asLearned: undefined, doubt: 0 };
  const doubt = Math.sqrt(varianceOf(knowledge.covariance, line.slopes.speed));
  return { asDrawn, asLearned: line.answer, doubt, line };
}

function lessonOf(
  attempt: Attempt,
  belief: Belief,
  changes: readonly Setting[],
  { line }: Foretold,
): Lesson | undefined {
  if (attempt.happened === 'measured') return { readings: foundReadings(attempt, belief) };
  if (attempt.happened === 'did not run' || line === undefined) return undefined;
  return {
    run: { attempt, changes },
    readings: straightReadings(attempt, line, belief.knowledge.mean),
  };
}

function foundReadings(attempt: MeasuredAttempt, { unknowns }: Belief): StraightReading[] {
  return attempt.found.flatMap((setting) => {
    const index = unknowns.findIndex(({ path }) => path === setting.path.join('.'));
    const [own, value] = [unknowns[index], unknownOf(setting)];
    if (own === undefined || value === undefined) return [];
    return [
      {
        slope: unknowns.map((_, i) => Number(i === index)),
        value: log(value.guess / own.guess),
        error: log(1 + attempt.within) / 2,
      },
    ];
  });
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
