/** The odds: the chance of each variant, how the speeds spread, and which size matters most. */
import type { OddsAt, OddsTask } from '../../study/odds.ts';
import { fixed } from '../../verdict/figures.ts';
import { measureWords } from '../../verdict/studies/measure-words.ts';
import { chanceText, oddsWords, pointText } from '../../verdict/studies/odds-words.ts';
import { chartNumber, type Chart } from '../charts/chart.ts';
import { inRpm } from '../csv/units.ts';
import type { ShownSection } from '../html/body.ts';
import { wideTable } from '../html/data-table.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { html } from '../html/markup.ts';
import { settingPath } from '../html/setting-path.ts';
import type { ReportAssets } from '../html/page.ts';
import { chanceBars } from '../svg/chance-bars.ts';
import { axisLabel } from './measure-axes.ts';
import { studyPage, type About } from './study-page.ts';

const GROUP = 'speeds';
const INKS = 6;

/** The page of the odds. */
export function oddsPage(
  about: About,
  task: OddsTask,
  found: readonly OddsAt[],
  assets: ReportAssets,
): string {
  const sections = [
    chanceSection(task, found),
    ...speedSection(task, found),
    ...influenceSection(task, found),
  ];
  return studyPage(
    { about, kind: 'odds of an engine as built', words: oddsWords(task, found), sections, files: 'odds.csv' },
    assets,
  );
}

const nameOf = (task: OddsTask, own: OddsAt): string =>
  task.plan.variations.length === 0 ? 'as built' : own.texts.join(', ') || pointText(task, own);

function chanceSection(task: OddsTask, found: readonly OddsAt[]): ShownSection {
  const bars = found.map((own) => ({
    label: nameOf(task, own),
    share: own.holds.count / own.holds.of,
    low: own.holds.low,
    high: own.holds.high,
  }));
  return {
    id: 'chances',
    heading: 'Chances',
    body: html`<figure>
        <figcaption>
          How many come out as they should; the fine line is where the chance lies with 95 % certainty
        </figcaption>
        ${chanceBars(bars, 'Chance that an engine as built does what it should')}
      </figure>
      ${wideTable('Table of chances', {
        head: ['', 'runs', ...task.conditions.map(({ words }) => words), 'all together'],
        rows: found.map((own) => [
          nameOf(task, own),
          chanceText(own.runs),
          ...own.conditions.map(chanceText),
          chanceText(own.holds),
        ]),
      })}`,
  };
}

function speedSection(task: OddsTask, found: readonly OddsAt[]): ShownSection[] {
  const drawn = found.filter(({ speeds }) => speeds.length > 1).slice(0, INKS);
  const [first] = drawn;
  if (first === undefined) return [];
  const steps = first.speeds.length - 1;
  const chart: Chart = {
    id: 'speeds',
    group: GROUP,
    x: { label: 'Share of the engines that run [%]', values: first.speeds.map((_, i) => (100 * i) / steps) },
    y: { label: axisLabel('speed') },
    lines: drawn.map((own, ink) => ({
      label: nameOf(task, own),
      ink,
      values: own.speeds.map((speed) => chartNumber(inRpm(speed))),
    })),
    marks: [{ at: 5 }, { at: 50 }, { at: 95 }],
  };
  const { text } = measureWords.speed;
  const spread = first.spread.speed;
  const title = spread
    ? `Nine in ten ${drawn.length > 1 ? `of “${nameOf(task, first)}” ` : ''}run at ${text(spread.low)} to ${text(spread.high)}`
    : 'How the speeds spread';
  return [
    {
      id: 'speeds',
      heading: 'Speeds',
      body: html`${chartFigure({ chart, title, alternative: `Speeds that a share of the engines stays below. ${title}.` })}
      ${cursorSlider(GROUP, 'Share of the engines [%]')}`,
      charts: [chart],
    },
  ];
}

function influenceSection(task: OddsTask, found: readonly OddsAt[]): ShownSection[] {
  if (task.tolerances.length < 2) return [];
  const correlation = (value: number): string => fixed(value, 2);
  return [
    {
      id: 'influences',
      heading: 'What matters most',
      body: html`${found.map(
          (own) =>
            html`<h3>${nameOf(task, own)}</h3>
              ${wideTable(`What matters most, ${nameOf(task, own)}`, {
                head: ['Size', 'with the speed', 'with the margin'],
                rows: own.influences.map(({ tolerance, withSpeed, withMargin }) => [
                  settingPath(tolerance.words),
                  correlation(withSpeed),
                  correlation(withMargin),
                ]),
              })}`,
        )}
        <p class="note">
          Rank correlations after Spearman: 1 when the larger size always goes with more, −1 when with less, 0
          when one says nothing about the other.
        </p>`,
    },
  ];
}
