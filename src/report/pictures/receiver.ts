/** Receiver, supply and speed over minutes. */
import { columnUnit } from '../../quantity/format.ts';
import { fixed, gaugeText, minutesText } from '../../verdict/figures.ts';
import { chartNumber, chartValues, type Chart, type ChartLine, type ChartMark } from '../charts/chart.ts';
import { thinnedRows } from '../charts/thinned-rows.ts';
import { inRpm } from '../csv/units.ts';
import { chartFigure, cursorSlider, type ChartFigure } from '../html/figure.ts';
import { dataTable } from '../html/data-table.ts';
import { html } from '../html/markup.ts';
import type { SectionContent } from '../sections/section.ts';

/** Columns of equal length. SI, absolute pressures. */
export interface ReceiverCourse {
  readonly time: ArrayLike<number>;
  readonly receiverPressure: ArrayLike<number>;
  /** Behind the regulator. */
  readonly supplyPressure: ArrayLike<number>;
  readonly speed: ArrayLike<number>;
  /** 1 while the compressor runs, 0 while it does not. */
  readonly compressorOn: ArrayLike<number>;
  readonly atmosphericPressure: number;
}

const GROUP = 'receiver';
const TABLE_ROWS = 15;
/** With more starts than this their names would cover each other. */
const NAMED_STARTS = 4;

const minutes = (seconds: number): number => seconds / 60;

export function receiverContent(course: ReceiverCourse): SectionContent {
  const figures = [pressures(course), speeds(course)];
  const bars = columnUnit('pressure difference');
  const last = course.time.length - 1;
  const rows = [
    ...new Set(Array.from({ length: TABLE_ROWS + 1 }, (_, i) => Math.round((i * last) / TABLE_ROWS))),
  ];
  const gauge = (pressure: number | undefined): string =>
    fixed(bars.of((pressure ?? NaN) - course.atmosphericPressure), bars.decimals);
  return {
    body: html`${figures.map(chartFigure)} ${cursorSlider(GROUP, 'Time [min]')}
    ${dataTable({
      caption: `The course at ${rows.length} moments`,
      head: [
        'Time [min]',
        `Receiver [${bars.label} gauge]`,
        `Behind the regulator [${bars.label} gauge]`,
        'Speed [rpm]',
        'Compressor',
      ],
      rows: rows.map((row) => [
        fixed(minutes(course.time[row] ?? NaN), 1),
        gauge(course.receiverPressure[row]),
        gauge(course.supplyPressure[row]),
        fixed(inRpm(course.speed[row] ?? NaN), 0),
        (course.compressorOn[row] ?? 0) > 0.5 ? 'runs' : 'stands',
      ]),
    })}`,
    charts: figures.map(({ chart }) => chart),
  };
}

function courseChart(course: ReceiverCourse, id: string, label: string, lines: readonly ChartLine[]): Chart {
  const rows = thinnedRows(course.receiverPressure);
  return {
    id,
    group: GROUP,
    x: {
      label: 'Time since the full receiver was opened [min]',
      values: rows.map((row) => chartNumber(minutes(course.time[row] ?? NaN))),
    },
    y: { label },
    lines,
    marks: starts(course),
  };
}

/** Where the compressor comes in. */
function starts({ time, compressorOn }: ReceiverCourse): ChartMark[] {
  const rows = Array.from(compressorOn, (on, i) => (on > 0.5 && (compressorOn[i - 1] ?? 0) <= 0.5 ? i : -1));
  const found = rows.filter((row) => row >= 0).map((row) => chartNumber(minutes(time[row] ?? NaN)));
  return found.map((at) => (found.length <= NAMED_STARTS ? { at, label: 'compressor starts' } : { at }));
}

function pressures(course: ReceiverCourse): ChartFigure {
  const bars = columnUnit('pressure difference');
  const rows = thinnedRows(course.receiverPressure);
  const drawn = (values: ArrayLike<number>): (number | null)[] =>
    chartValues(
      rows.map((row) => values[row] ?? NaN),
      (pressure) => bars.of(pressure - course.atmosphericPressure),
    );
  const lowest = Array.from(course.receiverPressure).reduce((a, b) => Math.min(a, b), Infinity);
  const when = course.time[Array.from(course.receiverPressure).indexOf(lowest)] ?? NaN;
  const title = `The receiver is lowest after ${minutesText(minutes(when))}, at ${gaugeText(lowest, course.atmosphericPressure)}`;
  return {
    chart: courseChart(course, 'receiver-pressures', `Pressure [${bars.label} gauge]`, [
      { label: 'receiver', ink: 0, values: drawn(course.receiverPressure) },
      { label: 'behind the regulator', ink: 1, values: drawn(course.supplyPressure) },
    ]),
    title,
    alternative: `Pressure in the receiver and behind the regulator over time. ${title}.`,
  };
}

function speeds(course: ReceiverCourse): ChartFigure {
  const rows = thinnedRows(course.receiverPressure);
  const values = chartValues(
    rows.map((row) => course.speed[row] ?? NaN),
    inRpm,
  );
  const all = Array.from(course.speed, inRpm);
  const [slowest, fastest] = [Math.min(...all), Math.max(...all)];
  const [low, high] = [fixed(slowest, 0), fixed(fastest, 0)];
  const title =
    low === high ? `The engine holds ${low} rpm` : `The engine does between ${low} and ${high} rpm`;
  return {
    chart: courseChart(course, 'receiver-speed', 'Speed [rpm]', [{ label: 'engine', ink: 2, values }]),
    title,
    alternative: `Speed of the engine over time. ${title}.`,
  };
}
