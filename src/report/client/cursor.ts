/** One cursor for a group of charts, moved by the pointer or, with the keyboard, by the slider below the group. */
import type uPlot from 'uplot';
import type { ChartLine } from '../charts/chart.ts';
import type { DrawnChart } from './drawn-chart.ts';

interface Slider {
  readonly input: HTMLInputElement;
  readonly output: HTMLOutputElement;
}

export function joinCursors(group: readonly DrawnChart[]): void {
  const [first] = group;
  const slider = first === undefined ? undefined : sliderOf(first);
  if (first === undefined || slider === undefined) return;
  const positions = first.chart.x.values;
  slider.input.max = String(positions.length - 1);
  slider.input.addEventListener('input', () => {
    const at = positions[slider.input.valueAsNumber] ?? 0;
    for (const { plot } of group) plot.setCursor({ left: plot.valToPos(at, 'x'), top: 0 });
  });
  for (const drawn of group) follow(drawn, slider);
}

function sliderOf({ chart }: DrawnChart): Slider | undefined {
  const paragraph = document.querySelector<HTMLElement>(`[data-slider="${chart.group}"]`);
  const input = paragraph?.querySelector('input');
  const output = paragraph?.querySelector('output');
  if (!paragraph || !input || !output) return undefined;
  paragraph.hidden = false;
  return { input, output };
}

/** Writes the values under the cursor into the key of the chart and moves the slider along. */
function follow({ chart, plot }: DrawnChart, slider: Slider): void {
  const outputs = chart.lines.map((_line, i) => document.querySelector(`[data-value="${chart.id}/${i}"]`));
  const listener = (self: uPlot): void => {
    const row = self.cursor.idx;
    outputs.forEach((output, i) => {
      if (output) output.textContent = readable(valueAt(chart.lines[i]?.values, row));
    });
    if (row === null || row === undefined) return;
    slider.input.value = String(row);
    slider.output.textContent = readable(chart.x.values[row]);
  };
  (plot.hooks.setCursor ??= []).push(listener);
}

/** Outside the chart there is no row. */
function valueAt(values: ChartLine['values'] | undefined, row: number | null | undefined): number | null {
  return values?.[row ?? NaN] ?? null;
}

function readable(value: number | null | undefined): string {
  return typeof value !== 'number' ? '' : String(Number(value.toPrecision(3))).replace('-', '−');
}
