/** Colours and fonts of the page for canvases, which do not see the style sheet, and what paper asks for. */
/** Width of a chart on paper [CSS px]: A4 less its margins. */
const PAPER_WIDTH = 640;

export const printing = matchMedia('print');

export const token = (name: string): string =>
  getComputedStyle(document.documentElement).getPropertyValue(name).trim();

export const canvasFont = (size: number): string => `${size}px ${token('--plain')}`;

export function chartWidth(element: HTMLElement): number {
  return printing.matches ? PAPER_WIDTH : Math.max(element.clientWidth, 200);
}
