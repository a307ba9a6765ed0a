/** How far a value may go: margin and speed along it, with the place where it is over. */
import type { Limit, LimitTask, Probe } from '../../study/limit.ts';
import type { Processes } from '../../study/processes.ts';
import { figure, shareText } from '../../verdict/figures.ts';
import { limitWords } from '../../verdict/studies/limit-words.ts';
import { chartNumber, type Chart } from '../charts/chart.ts';
import type { ShownSection } from '../html/body.ts';
import { dataTable } from '../html/data-table.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { html } from '../html/markup.ts';
import type { ReportAssets } from '../html/page.ts';
import { axisLabel, axisValue, unitLabel } from './measure-axes.ts';
import { studyPage, type About } from './study-page.ts';

const GROUP = 'limit';

/** The page of a limit. */
export function limitPage(
  about: About,
  task: LimitTask,
  found: Limit,
  processes: Processes | undefined,
  assets: ReportAssets,
): string {
  const words = limitWords(task, found, processes);
  const sections = [alongSection(task, found)];
  return studyPage({ about, kind: 'limit of one setting', words, sections, files: 'limit.json' }, assets);
}

function alongSection(task: LimitTask, { probes, holds, fails }: Limit): ShownSection {
  const path = task.paths[0] ?? '';
  const marks =
    holds && fails ? [{ at: chartNumber(holds.value), label: `${task.wanted}: ${holds.text}` }] : [];
  const along = (
    id: string,
    label: string,
    values: readonly (number | null)[],
    ink: number,
    name: string,
  ): Chart => ({
    id,
    group: GROUP,
    x: { label: path + unitLabel(task.ramp.unit), values: probes.map(({ value }) => chartNumber(value)) },
    y: { label },
    lines: [{ label: name, ink, values }],
    marks: id === 'limit-speed' ? marks : marks.map(({ at }) => ({ at })),
  });
  const starts = probes.some(({ answer }) => answer.values.startShare !== undefined);
  const charts = [
    along(
      'limit-speed',
      axisLabel('speed'),
      probes.map(({ answer }) => axisValue('speed', answer)),
      0,
      'speed',
    ),
    ...(starts
      ? [
          along(
            'limit-starts',
            axisLabel('startShare'),
            probes.map(({ answer }) => axisValue('startShare', answer)),
            2,
            'starts unaided',
          ),
        ]
      : []),
    along(
      'limit-margin',
      'Margin [%]',
      probes.map(({ margin }) => chartNumber(100 * margin)),
      1,
      'of the condition hardest to meet',
    ),
  ];
  return {
    id: 'along',
    heading: 'Along the range',
    body: html`${charts.map((chart) => chartFigure({ chart, title: titles[chart.id] ?? '', alternative: `${chart.y.label} against ${path}.` }))}
      ${cursorSlider(GROUP, path + unitLabel(task.ramp.unit))} ${table(path, probes)}
      <p class="note">
        The margin is how far the engine is on the good side, as a share of what is asked; below zero the
        condition fails, and an engine that does not run has −100 %. What lies between two values that were
        tried is not seen.
      </p>`,
    charts,
  };
}

const titles: Readonly<Record<string, string>> = {
  'limit-speed': 'The speed along the range, where it runs',
  'limit-starts': 'From how many positions it starts',
  'limit-margin': 'How far it is on the good side',
};

function table(path: string, probes: readonly Probe[]) {
  return dataTable({
    caption: 'Every value that was tried',
    head: [path, 'Margin', 'Speed [rpm]', 'Outcome'],
    rows: probes.map(({ text, margin, answer }) => {
      const speed = axisValue('speed', answer);
      return [text, shareText(margin), speed === null ? '–' : figure(speed), answer.outcome];
    }),
  });
}
