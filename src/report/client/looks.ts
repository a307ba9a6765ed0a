/** Colours and fonts of the page for canvases, which do not see the style sheet, and redrawing when they change. */
import type { DrawnChart } from './drawn-chart.ts';

/** Width of a chart on paper [CSS px]: A4 less its margins. */
const PAPER_WIDTH = 640;

const printing = matchMedia('print');
const dark = matchMedia('(prefers-color-scheme: dark)');

export const token = (name: string): string =>
  getComputedStyle(document.documentElement).getPropertyValue(name).trim();

export const canvasFont = (size: number): string => `${size}px ${token('--plain')}`;

export function chartWidth(element: HTMLElement): number {
  return printing.matches ? PAPER_WIDTH : Math.max(element.clientWidth, 200);
}

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
