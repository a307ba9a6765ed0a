/** Answers of studies as the objects that are written as JSON; figures in the units of their names. */
import type { Best } from '../../study/best.ts';
import type { BestTask, Tried } from '../../study/best-search.ts';
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { Limit, LimitTask, Probe } from '../../study/limit.ts';
import type { NextChanges } from '../../study/next-changes.ts';
import type { OddsAt, OddsTask } from '../../study/odds.ts';
import type { Processes } from '../../study/processes.ts';
import type { Quantiles, Share } from '../../study/statistics.ts';
import type { MeasureName } from '../../study/measures.ts';
import type { Variation } from '../../study/variations/variation.ts';
import { bestWords } from '../../verdict/studies/best-words.ts';
import { limitWords } from '../../verdict/studies/limit-words.ts';
import { nextWords } from '../../verdict/studies/next-words.ts';
import { oddsWords } from '../../verdict/studies/odds-words.ts';
import type { StudyWords } from '../../verdict/studies/study-words.ts';
import { measureCells, measureColumns, measureHeaders } from '../csv/study-columns.ts';
import { numberOrNull } from '../summary/number-or-null.ts';
import type { About } from './study-page.ts';

export type StudySummary = Readonly<Record<string, unknown>>;

const headed = (question: string, { title }: About, { headline, statements }: StudyWords): StudySummary => ({
  schema_version: 1,
  question,
  title,
  headline,
  statements,
});

function answerSummary({ outcome, reason, values }: EngineAnswer): StudySummary {
  const cells = measureCells(values);
  return {
    outcome,
    reason,
    ...Object.fromEntries(measureHeaders.map((name, i) => [name, cells[i] ?? null])),
  };
}

const settingsOf = (variations: readonly Variation[], texts: readonly string[]): StudySummary =>
  Object.fromEntries(variations.flatMap(({ paths }, i) => paths.map((path) => [path, texts[i] ?? ''])));

/** A best setting as the object that is written as JSON. */
export function bestSummary(about: About, task: BestTask, found: Best): StudySummary {
  const tried = ({ texts, answer, holds }: Tried): StudySummary => ({
    settings: settingsOf(task.variations, texts),
    holds,
    ...answerSummary(answer),
  });
  return {
    ...headed('best', about, bestWords(task, found)),
    aim: task.aim.words,
    conditions: task.conditions.map(({ words }) => words),
    engines: found.engines,
    closed: found.closed,
    best: found.best ? tried(found.best) : null,
    walks: found.walks.map((walk) => ({
      setting: walk.variation.paths[0] ?? '',
      on_bound: walk.onBound ?? null,
      flat: walk.flat ?? null,
      tried: walk.tried.map(tried),
    })),
  };
}

/** A limit as the object that is written as JSON. */
export function limitSummary(
  about: About,
  task: LimitTask,
  found: Limit,
  processes: Processes | undefined,
): StudySummary {
  const probe = ({ text, margin, answer }: Probe): StudySummary => ({
    value: text,
    margin: numberOrNull(margin),
    ...answerSummary(answer),
  });
  return {
    ...headed('limit', about, limitWords(task, found, processes)),
    settings: task.paths,
    wanted: task.wanted,
    conditions: task.conditions.map(({ words }) => words),
    holds: found.holds ? probe(found.holds) : null,
    fails: found.fails ? probe(found.fails) : null,
    gaps: found.gaps,
    processes: processes ?? null,
    probes: found.probes.map(probe),
  };
}

const shareSummary = ({ count, of, low, high }: Share): StudySummary => ({
  count,
  of,
  low: numberOrNull(low),
  high: numberOrNull(high),
});

function spreadSummary(spread: OddsAt['spread']): StudySummary {
  return Object.fromEntries(
    Object.entries(spread).map(([name, { low, median, high }]: [string, Quantiles]) => {
      const { header, convert } = measureColumns[name as MeasureName];
      const [p05, p50, p95] = [low, median, high].map((value) => numberOrNull(convert(value)));
      return [header, { p05, p50, p95 }];
    }),
  );
}

/** Odds as the object that is written as JSON. */
export function oddsSummary(about: About, task: OddsTask, found: readonly OddsAt[]): StudySummary {
  return {
    ...headed('odds', about, oddsWords(task, found)),
    engines: task.engines,
    seed: task.seed,
    tolerances: task.tolerances.map(({ words }) => words),
    variants: found.map((own) => ({
      settings: settingsOf(task.plan.variations, own.texts),
      runs: shareSummary(own.runs),
      holds: shareSummary(own.holds),
      conditions: task.conditions.map(({ words }, i) => ({
        condition: words,
        ...shareSummary(own.conditions[i] ?? own.runs),
      })),
      spread: spreadSummary(own.spread),
      influences: own.influences.map(({ tolerance, withMargin, withSpeed }) => ({
        setting: tolerance.path,
        rank_correlation_with_margin: numberOrNull(withMargin),
        rank_correlation_with_speed: numberOrNull(withSpeed),
      })),
    })),
  };
}

/** What to change next as the object that is written as JSON. */
export function nextSummary(about: About, found: NextChanges): StudySummary {
  return {
    ...headed('next', about, nextWords(found)),
    now: answerSummary(found.now),
    changes: found.changes.map(({ setting, to, answer, effect }) => ({
      setting: setting.path,
      from: setting.text,
      to,
      speed_effect: numberOrNull(effect.speed),
      starts_effect: numberOrNull(effect.starts),
      air_per_work_effect: numberOrNull(effect.airPerWork),
      ...answerSummary(answer),
    })),
  };
}
