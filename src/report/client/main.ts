/** Draws the charts of a report into their places. The data stands as JSON in the page; nothing is fetched. */
import type { Chart } from '../charts/chart.ts';
import { drawn, type DrawnChart } from './drawn-chart.ts';
import { joinCursors } from './cursor.ts';
import { redrawWhenLooksChange } from './redraw.ts';

interface ReportData {
  readonly charts: readonly Chart[];
}

function reportData(): ReportData {
  const text = document.getElementById('report-data')?.textContent ?? '{"charts":[]}';
  return JSON.parse(text) as ReportData;
}

const place = (id: string): HTMLElement | undefined =>
  [...document.querySelectorAll<HTMLElement>('[data-chart]')].find(
    (element) => element.dataset['chart'] === id,
  );

const charts = reportData().charts.flatMap((chart): DrawnChart[] => {
  const element = place(chart.id);
  return element === undefined ? [] : [drawn(chart, element)];
});

const groups = new Set(charts.map(({ chart }) => chart.group));
for (const group of groups) joinCursors(charts.filter(({ chart }) => chart.group === group));
redrawWhenLooksChange(charts);
