/** How likely an engine made within tolerances does what it should. */
import type { Influence, OddsAt, OddsTask } from '../../study/odds.ts';
import type { Quantiles, Share } from '../../study/statistics.ts';
import type { MeasureName } from '../../study/measures.ts';
import { shareText } from '../figures.ts';
import { listed, measureWords } from './measure-words.ts';
import type { StudyWords } from './study-words.ts';

/** "87 % (83 to 90 %)" */
export const chanceText = ({ count, of, low, high }: Share): string =>
  `${shareText(count / of)} (${shareText(low).replace(' %', '')} to ${shareText(high)})`;

export const pointText = ({ plan }: OddsTask, { texts }: OddsAt): string =>
  listed(plan.variations.map(({ paths }, i) => `${paths[0] ?? ''} ${texts[i] ?? ''}`));

/** Odds in words. */
export function oddsWords(task: OddsTask, found: readonly OddsAt[]): StudyWords {
  const several = found.length > 1;
  const wanted = task.conditions.length === 0 ? 'runs' : listed(task.conditions.map(({ words }) => words));
  const [first] = found;
  const best = found.reduce<OddsAt | undefined>(
    (a, b) => (a === undefined || b.holds.count > a.holds.count ? b : a),
    undefined,
  );
  const headline =
    several && best !== undefined
      ? `Of ${best.holds.of} engines built with ${pointText(task, best)}, ${chanceText(best.holds)} come out so that each ${wanted}; that is the best of ${found.length}.`
      : first === undefined
        ? 'No engine was built.'
        : `Of ${first.holds.of} engines built within these tolerances, ${chanceText(first.holds)} come out so that each ${wanted}.`;
  return {
    headline,
    good: (best?.holds.count ?? 0) > 0,
    statements: [
      ...found.flatMap((own) => pointSentences(task, own, several)),
      'In brackets is where the chance lies with 95 % certainty, as far as the number of engines tells.',
    ],
    figures: several ? [] : first === undefined ? [] : spreadRows(first),
  };
}

function pointSentences(task: OddsTask, own: OddsAt, several: boolean): string[] {
  const with_ = several ? `With ${pointText(task, own)}: ` : '';
  const each = task.conditions.map(
    ({ words }, i) => `${chanceText(own.conditions[i] ?? own.runs)} ${plural(words)}`,
  );
  const speed = own.spread.speed;
  const how = speed ? `; nine in ten of those that run do ${spreadText('speed', speed)}` : '';
  return [`${with_}${listed([`${chanceText(own.runs)} run`, ...each])}${how}.`, ...influenceSentence(own)];
}

/** "starts unaided" of many is "start unaided". */
const plural = (words: string): string =>
  words.replace(/^(\w+?)s\b/u, (whole, stem: string) =>
    stem === 'doe' ? 'do' : stem === 'reache' ? 'reach' : stem || whole,
  );

const WEAK = 0.2;

function influenceSentence({ influences }: OddsAt): string[] {
  const [first, ...others] = influences;
  if (first === undefined || others.length === 0) return [];
  const strength = (own: Influence): number => Math.max(Math.abs(own.withMargin), Math.abs(own.withSpeed));
  if (strength(first) < WEAK) return ['No single tolerance stands out.'];
  const rest = others.filter((own) => strength(own) >= WEAK);
  const then = rest.length === 0 ? '' : `, then ${listed(rest.map(influenceText))}`;
  return [`What matters most is ${influenceText(first)}${then}.`];
}

function influenceText({ tolerance, withSpeed, withMargin }: Influence): string {
  const strongest = Math.abs(withSpeed) >= Math.abs(withMargin) ? withSpeed : withMargin;
  const what = strongest === withSpeed ? 'speed' : 'margin';
  return `${tolerance.path} (rank correlation ${strongest.toFixed(2).replace('-', '−')} with the ${what})`;
}

const spreadText = (name: MeasureName, { low, high }: Quantiles): string =>
  `${measureWords[name].text(low)} to ${measureWords[name].text(high)}`;

/** Rows of what nine in ten lie between, with the median. */
function spreadRows({ spread }: OddsAt): (readonly [string, string])[] {
  return Object.entries(spread).map(([name, own]) => {
    const { name: label, text } = measureWords[name as MeasureName];
    return [label, `${text(own.median)}; nine in ten from ${spreadText(name as MeasureName, own)}`] as const;
  });
}
