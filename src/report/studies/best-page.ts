/** The best setting: where it lies in each range, and what was tried. */
import type { Best, Walk } from '../../study/best.ts';
import type { BestTask, Tried } from '../../study/best-search.ts';
import type { MeasureName } from '../../study/measures.ts';
import type { Range } from '../../study/variations/variation.ts';
import { bestWords } from '../../verdict/studies/best-words.ts';
import { measureWords } from '../../verdict/studies/measure-words.ts';
import { chartNumber, type Chart } from '../charts/chart.ts';
import type { ShownSection } from '../html/body.ts';
import { dataTable } from '../html/data-table.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { html } from '../html/markup.ts';
import { settingPath } from '../html/setting-path.ts';
import type { ReportAssets } from '../html/page.ts';
import { axisLabel, axisName, axisValue, unitLabel } from './measure-axes.ts';
import { studyPage, type About } from './study-page.ts';

/** The page of a best setting. */
export function bestPage(about: About, task: BestTask, found: Best, assets: ReportAssets): string {
  const { best } = found;
  const sections = best === undefined ? [] : found.walks.map((walk, i) => walkSection(task, walk, best, i));
  return studyPage(
    { about, kind: 'best setting', words: bestWords(task, found), sections, files: 'best.json' },
    assets,
  );
}

/** From one end of the range to the other, ascending. */
function ascending(walk: Walk, range: Range, i: number): { readonly x: number; readonly own: Tried }[] {
  const valueOf = ({ at }: Tried): number => range.valueAt(at[i] ?? NaN);
  return walk.tried.map((own) => ({ x: chartNumber(valueOf(own)), own })).sort((a, b) => a.x - b.x);
}

function walkSection(task: BestTask, walk: Walk, best: Tried, i: number): ShownSection {
  const { measure } = task.aim;
  const { range, paths } = walk.variation;
  const path = paths[0] ?? '';
  const heading = settingPath(path);
  if (range === undefined) return { id: `walk-${i}`, heading, body: table(walk, measure, i) };
  const points = ascending(walk, range, i);
  const charts = [...new Set<MeasureName>([measure, 'air'])].map((name) =>
    walkChart(
      `walk-${i}-${name}`,
      `walk-${i}`,
      name,
      points,
      range,
      chartNumber(range.valueAt(best.at[i] ?? NaN)),
      path,
    ),
  );
  const title = titleOf(walk, best, i);
  return {
    id: `walk-${i}`,
    heading,
    body: html`${charts.map((chart, k) =>
      chartFigure({
        chart,
        title: k === 0 ? title : `What it takes meanwhile`,
        alternative: `${chart.y.label} against ${path}. ${title}.`,
      }),
    )}
    ${cursorSlider(`walk-${i}`, path + unitLabel(range.unit))} ${table(walk, measure, i)}`,
    charts,
  };
}

function walkChart(
  id: string,
  group: string,
  measure: MeasureName,
  points: readonly { readonly x: number; readonly own: Tried }[],
  range: Range,
  at: number,
  path: string,
): Chart {
  const values = (holds: boolean): (number | null)[] =>
    points.map(({ own }) => (own.holds === holds ? axisValue(measure, own.answer) : null));
  const others = values(false);
  return {
    id,
    group,
    x: { label: path + unitLabel(range.unit), values: points.map(({ x }) => x) },
    y: { label: axisLabel(measure) },
    lines: [
      { label: 'meets the conditions', ink: 0, values: values(true) },
      ...(others.some((own) => own !== null)
        ? [{ label: 'runs, but does not', ink: 1, values: others }]
        : []),
    ],
    marks: [{ at, label: 'best' }],
  };
}

function titleOf({ flat, onBound }: Walk, { texts }: Tried, i: number): string {
  const at = texts[i] ?? '';
  if (onBound !== undefined) return `The best lies at the end of the range, ${at}`;
  return flat === undefined
    ? `Best at ${at}`
    : `Best at ${at}, and hardly worse from ${flat.from} to ${flat.to}`;
}

function table({ variation, tried }: Walk, measure: MeasureName, i: number) {
  const { text } = measureWords[measure];
  return dataTable({
    caption: 'What was tried here',
    head: [variation.paths[0] ?? '', axisName(measure), 'Outcome', 'Conditions'],
    rows: tried.map(({ texts, answer, holds }) => [
      texts[i] ?? '',
      answer.values[measure] === undefined ? '–' : text(answer.values[measure]),
      answer.outcome,
      holds ? 'met' : 'not met',
    ]),
  });
}
