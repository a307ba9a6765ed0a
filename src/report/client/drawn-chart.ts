/** One chart of the report as a uPlot. */
import uPlot from 'uplot';
import type { Chart, ChartLine } from '../charts/chart.ts';
import { inkDashes } from '../charts/inks.ts';
import { canvasFont, chartWidth, token } from './looks.ts';
import { marksPlugin } from './marks.ts';

export interface DrawnChart {
  readonly chart: Chart;
  readonly element: HTMLElement;
  readonly plot: uPlot;
}

const HEIGHT = 240;
const FONT_SIZE = 12;

export function drawn(chart: Chart, element: HTMLElement): DrawnChart {
  const data: uPlot.AlignedData = [[...chart.x.values], ...chart.lines.map(({ values }) => [...values])];
  return { chart, element, plot: new uPlot(options(chart, element), data, element) };
}

function options(chart: Chart, element: HTMLElement): uPlot.Options {
  const labelled = chart.marks.some(({ label }) => label !== undefined);
  return {
    width: chartWidth(element),
    height: HEIGHT,
    padding: [labelled ? 36 : 10, 12, 0, 0],
    legend: { show: false },
    cursor: { sync: { key: chart.group }, drag: { x: false, y: false }, y: false },
    scales: { x: { time: false, range: (_plot, low, high) => [low, high] } },
    axes: [
      { ...axis(chart.x.label, chart.x.steps), size: 26 },
      { ...axis(chart.y.label), size: 52 },
    ],
    series: [{}, ...chart.lines.map(line)],
    plugins: [marksPlugin(chart.marks)],
  };
}

function axis(label: string, steps?: readonly number[]): uPlot.Axis {
  const font = canvasFont(FONT_SIZE);
  const fine = { stroke: () => token('--rule'), width: 1 };
  return {
    label,
    labelFont: font,
    font,
    labelSize: 20,
    labelGap: 0,
    stroke: () => token('--quiet'),
    grid: fine,
    ticks: { ...fine, size: 5 },
    ...(steps === undefined ? {} : { incrs: [...steps] }),
  };
}

/** Values without a neighbour, which no line would show. */
function alone(plot: uPlot, series: number): number[] {
  const values = plot.data[series] ?? [];
  const isThere = (i: number): boolean => typeof values[i] === 'number';
  return Array.from(values, (_, i) => i).filter((i) => isThere(i) && !isThere(i - 1) && !isThere(i + 1));
}

function line({ label, ink, points }: ChartLine): uPlot.Series {
  const stroke = (): string => token(`--ink-${ink}`);
  if (points === true) {
    // No path between them, and every one is drawn however close they stand.
    const none = (): null => null;
    return { label, stroke, paths: none, points: { show: true, size: 5, fill: stroke, stroke } };
  }
  return {
    label,
    width: 2,
    stroke,
    dash: (inkDashes[ink] ?? []).map((length) => length * devicePixelRatio),
    points: { show: true, size: 5, fill: stroke, stroke, filter: alone },
  };
}
