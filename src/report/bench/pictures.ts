/** Pictures of a finding as charts of the page, each with its readings as a table. */
import type { Picture } from '../../measure/finding.ts';
import { chartNumber, chartValues, type Chart } from '../charts/chart.ts';
import { dataTable } from '../html/data-table.ts';
import { chartFigure } from '../html/figure.ts';
import type { Markup } from '../html/markup.ts';
import { figure } from '../../verdict/figures.ts';

export interface DrawnPicture {
  readonly chart: Chart;
  readonly body: Markup;
  readonly table: Markup;
}

const TABLE_ROWS = 40;

export const pictureFigures = (pictures: readonly Picture[]): DrawnPicture[] => pictures.map(drawn);

function drawn(picture: Picture): DrawnPicture {
  const { id, title, x, y, lines } = picture;
  const chart: Chart = {
    id,
    group: id,
    x: {
      label: x.label,
      values: x.values.map(chartNumber),
      ...(x.whole === true ? { steps: [1, 2, 5, 10, 20] } : {}),
    },
    y,
    lines: lines.map(({ label, values, points }, ink) => ({
      label,
      ink,
      values: chartValues(values, (value) => value),
      ...(points === true ? { points } : {}),
    })),
    marks: [],
  };
  return {
    chart,
    body: chartFigure({
      chart,
      title,
      alternative: `${y.label} against ${x.label.toLowerCase()}. ${title}.`,
    }),
    table: tableOf(picture),
  };
}

function tableOf({ title, x, y, lines }: Picture): Markup {
  const step = Math.max(1, Math.ceil(x.values.length / TABLE_ROWS));
  const rows = x.values.flatMap((value, i) =>
    i % step === 0 ? [[figure(value), ...lines.map(({ values }) => figure(values[i] ?? NaN))]] : [],
  );
  const which = step === 1 ? '' : `, every ${step}th row`;
  return dataTable({
    caption: `${title}: ${y.label}${which}`,
    head: [x.label, ...lines.map(({ label }) => label)],
    rows,
  });
}
