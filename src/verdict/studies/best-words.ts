/** What the search for the best setting found. */
import type { Aim } from '../../study/aims/aim.ts';
import type { Best, Walk } from '../../study/best.ts';
import type { BestTask, Tried } from '../../study/best-search.ts';
import type { Variation } from '../../study/variations/variation.ts';
import { listed, measureRows, measureWords, troubleOf } from './measure-words.ts';
import type { StudyWords } from './study-words.ts';

/** A best setting in words. */
export function bestWords(task: BestTask, found: Best): StudyWords {
  const { best } = found;
  if (best === undefined) return nothingFound(task, found);
  return {
    headline: `Best for ${task.aim.words}: ${settingsText(task.variations, best)}. ${shown(task.aim, best)}.`,
    good: true,
    statements: [
      ...(task.conditions.length > 0 ? [`It ${listed(task.conditions.map(({ words }) => words))}.`] : []),
      ...found.walks.flatMap((walk, i) => [...boundSentence(walk, best, i), ...flatSentence(walk)]),
      ...conditionSentence(task, found),
      found.closed
        ? `The search came to an end after ${found.engines} engines.`
        : `The search was cut short after ${found.engines} engines; allow it more (most_engines) to be surer.`,
    ],
    figures: measureRows(best.answer.values),
  };
}

const settingsText = (variations: readonly Variation[], { texts }: Pick<Tried, 'texts'>): string =>
  listed(variations.map(({ paths }, i) => `${paths[0] ?? ''} at ${texts[i] ?? ''}`));

function shown({ measure }: Aim, { answer }: Tried): string {
  const { name, text } = measureWords[measure];
  const value = answer.values[measure];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${value === undefined ? 'not known' : text(value)}`;
}

function nothingFound(task: BestTask, { closest, engines }: Best): StudyWords {
  const wanted = task.conditions.length === 0 ? 'runs' : listed(task.conditions.map(({ words }) => words));
  const nearest =
    closest === undefined
      ? []
      : [`The closest has ${settingsText(task.variations, closest)}: ${troubleOf(closest.answer)}`];
  return {
    headline: `None of ${engines} engines within these ranges ${wanted}.`,
    good: false,
    statements: nearest,
    figures: closest ? measureRows(closest.answer.values) : [],
  };
}

function boundSentence({ variation, onBound }: Walk, best: Tried, i: number): string[] {
  if (onBound === undefined) return [];
  return [
    `${variation.paths[0] ?? ''} lies at the end of its range, ${best.texts[i] ?? ''}; beyond it there may be a better one.`,
  ];
}

function flatSentence({ variation, flat }: Walk): string[] {
  if (flat === undefined) return [];
  return [
    `The optimum is flat: with ${variation.paths[0] ?? ''} anywhere from ${flat.from} to ${flat.to} less than 1 % is lost.`,
  ];
}

/** A better engine may have been turned down for a condition. */
function conditionSentence({ conditions, aim, variations }: BestTask, { best, walks }: Best): string[] {
  if (conditions.length === 0 || best?.score === undefined) return [];
  const turnedDown = walks
    .flatMap(({ tried }) => tried)
    .filter((own) => !own.holds && own.score !== undefined && own.score > (best.score ?? Infinity))
    .sort((a, b) => (b.score ?? 0) - (a.score ?? 0))[0];
  if (turnedDown === undefined) return [];
  const value = turnedDown.answer.values[aim.measure];
  return [
    `The conditions cost something: ${settingsText(variations, turnedDown)} would give ` +
      `${value === undefined ? 'more' : measureWords[aim.measure].text(value)}, but does not meet them.`,
  ];
}
