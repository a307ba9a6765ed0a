/** From rest: speed against time, and for an engine that does not run the pressures as well. */
import { columnUnit } from '../../quantity/format.ts';
import type { EngineFacts, RunResult, Trace } from '../../run/result.ts';
import { placeText } from '../../verdict/ends.ts';
import { lastSpeed } from '../../verdict/headline.ts';
import { angleText, fixed, gaugeText, secondsText, speedText } from '../../verdict/figures.ts';
import { chartNumber, chartValues, type Chart, type ChartLine } from '../charts/chart.ts';
import { thinnedRows } from '../charts/thinned-rows.ts';
import { inDegrees, inRpm } from '../csv/units.ts';
import { reportFileNames } from '../file-names.ts';
import { chartFigure, cursorSlider, type ChartFigure } from '../html/figure.ts';
import { dataTable } from '../html/data-table.ts';
import { html, type Markup } from '../html/markup.ts';
import type { Section } from './section.ts';

const GROUP = 'start';
const TABLE_ROWS = 20;

export const startSection: Section = {
  id: 'start',
  heading: 'From rest',
  content: (result) => {
    if (result.trace.time.length < 2) return undefined;
    const figures = [speeds(result), ...(result.settled === undefined ? [pressures(result)] : [])];
    return {
      body: html`${figures.map(chartFigure)} ${cursorSlider(GROUP, 'Time [s]')}
        ${traceTable(result.trace, result.engine)}
        <p class="note">Every recorded moment is in ${reportFileNames.startUp}.</p>`,
      charts: figures.map(({ chart }) => chart),
    };
  },
};

function traceChart(trace: Trace, id: string, yLabel: string, lines: readonly ChartLine[]): Chart {
  return {
    id,
    group: GROUP,
    x: {
      label: 'Time since the air was turned on [s]',
      values: thinnedRows(trace.speed).map((row) => chartNumber(trace.time[row] ?? NaN)),
    },
    y: { label: yLabel },
    lines,
    marks: [],
  };
}

const thinned = ({ speed }: Trace, column: Float64Array): number[] =>
  thinnedRows(speed).map((row) => column[row] ?? NaN);

function speeds(result: RunResult): ChartFigure {
  const { trace, settled } = result;
  const values = thinned(trace, trace.speed);
  const lines: ChartLine[] = [{ label: 'speed', ink: 0, values: chartValues(values, inRpm) }];
  if (settled !== undefined)
    lines.push({
      label: 'settled, mean of a turn',
      ink: 1,
      values: values.map(() => chartNumber(inRpm(settled.speed))),
    });
  const title = settled === undefined ? withoutSettling(result) : untilSettled(trace, settled.speed);
  return {
    chart: traceChart(trace, 'speeds', 'Speed [rpm]', lines),
    title,
    alternative: `Speed of the crankshaft against time. ${title}.`,
  };
}

function untilSettled(trace: Trace, settled: number): string {
  const reached = trace.time[trace.speed.findIndex((speed) => speed >= settled)];
  return reached === undefined
    ? `It works its way up to ${speedText(settled)}`
    : `It first reaches its ${speedText(settled)} after ${secondsText(reached)}`;
}

function withoutSettling(result: RunResult): string {
  const { trace, outcome } = result;
  const fastest = trace.speed.reduce((a, b) => Math.max(a, b), 0);
  const end = lastSpeed(result);
  const ending = Math.abs(end) < 1e-3 * Math.max(fastest, 1) ? 'stands still' : `does ${speedText(end)}`;
  return `It reaches ${speedText(fastest)} at most and ${ending} at the end, ${secondsText(outcome.time)} after the start`;
}

function pressures({ trace, engine, outcome }: RunResult): ChartFigure {
  const bars = columnUnit('pressure difference');
  const gauge = (pressure: number): number => bars.of(pressure - engine.atmosphericPressure);
  const [{ name }] = engine.ends;
  const last = trace.cylinderPressure.at(-1) ?? NaN;
  return {
    chart: traceChart(trace, 'trace-pressures', `Pressure [${bars.label} gauge]`, [
      { label: name, ink: 0, values: chartValues(thinned(trace, trace.cylinderPressure), gauge) },
      { label: 'valve chest', ink: 1, values: chartValues(thinned(trace, trace.chestPressure), gauge) },
    ]),
    title: `At the end, with the crank at ${angleText(outcome.crankAngle)}, ${placeText(name)} holds ${gaugeText(last, engine.atmosphericPressure)}`,
    alternative: 'Cylinder and chest pressure against time since the air was turned on.',
  };
}

function traceTable(trace: Trace, engine: EngineFacts): Markup {
  const last = trace.time.length - 1;
  const rows = Array.from({ length: TABLE_ROWS + 1 }, (_, i) => Math.round((i * last) / TABLE_ROWS));
  const unit = columnUnit('pressure difference');
  const gauge = (pressure: number | undefined): string =>
    fixed(unit.of((pressure ?? NaN) - engine.atmosphericPressure), unit.decimals);
  return dataTable({
    caption: `The start at ${TABLE_ROWS + 1} moments`,
    head: [
      'Time [s]',
      'Turned [°]',
      'Speed [rpm]',
      `Chest [${unit.label} gauge]`,
      `Cylinder [${unit.label} gauge]`,
    ],
    rows: [...new Set(rows)].map((row) => [
      fixed(trace.time[row] ?? NaN, 2),
      fixed(inDegrees((trace.crankAngle[row] ?? NaN) - (trace.crankAngle[0] ?? NaN)), 0),
      fixed(inRpm(trace.speed[row] ?? NaN), 1),
      gauge(trace.chestPressure[row]),
      gauge(trace.cylinderPressure[row]),
    ]),
  });
}
