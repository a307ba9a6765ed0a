/** A picture with its title, a key to its lines, and the numbers behind it. */
import type { Chart, ChartLine } from '../charts/chart.ts';
import { inkDashes } from '../charts/inks.ts';
import { html, svg, type Content, type Markup } from './markup.ts';
import { prose } from './prose.ts';

export interface ChartFigure {
  readonly chart: Chart;
  /** A sentence that says what to see. */
  readonly title: string;
  /** The picture in words. */
  readonly alternative: string;
  readonly note?: Content;
}

export function chartFigure({ chart, title, alternative, note }: ChartFigure): Markup {
  return html`<figure class="chart">
    <figcaption>${prose(title)}</figcaption>
    <ul class="key">
      ${chart.lines.map((line, i) => keyEntry(chart.id, line, i))}
    </ul>
    <div class="plot" data-chart="${chart.id}" role="img" aria-label="${alternative}"></div>
    ${note}
  </figure>`;
}

function keyEntry(id: string, { label, ink, points }: ChartLine, i: number): Markup {
  const dash = (inkDashes[ink] ?? []).join(' ');
  return html`<li>
    ${points === true ? pointsSwatch(ink) : lineSwatch(ink, dash)}${label}
    <output data-value="${id}/${i}"></output>
  </li>`;
}

export const lineSwatch = (ink: number, dash: string): Markup =>
  svg`<svg class="swatch" width="34" height="10" aria-hidden="true"><path class="line-${ink}" d="M1 5H33" stroke-dasharray="${dash}"/></svg>`;

/** Round dots: strokes of no length with round ends, so that one class colours lines and points. */
const pointsSwatch = (ink: number): Markup =>
  svg`<svg class="swatch" width="34" height="10" aria-hidden="true"><path class="line-${ink} points" d="M7 5h0M17 5h0M27 5h0"/></svg>`;

/** The slider that moves the cursor of a group of charts; hidden until the script brings it to life. */
export function cursorSlider(group: string, label: string): Markup {
  return html`<p class="slider" data-slider="${group}" hidden>
    <label>${label} <input type="range" min="0" step="1" value="0" /></label> <output></output>
  </p>`;
}
