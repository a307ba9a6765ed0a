/** Charts drawn again when the window, the colour scheme or the medium changes. */
import type { DrawnChart } from './drawn-chart.ts';
import { chartWidth, printing } from './looks.ts';

const dark = matchMedia('(prefers-color-scheme: dark)');

export function redrawWhenLooksChange(charts: readonly DrawnChart[]): void {
  const fit = (): void => {
    for (const { plot, element } of charts) plot.setSize({ width: chartWidth(element), height: plot.height });
  };
  const repaint = (): void => {
    for (const { plot } of charts) plot.redraw();
  };
  const sizes = new ResizeObserver(fit);
  for (const { element } of charts) sizes.observe(element);
  printing.addEventListener('change', fit);
  for (const query of [dark, printing]) query.addEventListener('change', repaint);
}
