/** Squared paper for a drawing: a frame with round tick marks, their numbers and the names of both axes. */
import { fixed } from '../../verdict/figures.ts';
import { svg, type Markup } from '../html/markup.ts';
import { coordinate, linearScale, type Scale } from './scale.ts';

export const paperSize = { width: 420, height: 340 } as const;
export const paperFrame = { left: 46, right: 410, top: 12, bottom: 294 } as const;

export interface Axis {
  /** In the unit that the label names. */
  readonly domain: readonly [number, number];
  readonly label: string;
}

export interface Paper {
  readonly x: Scale;
  readonly y: Scale;
  readonly grid: Markup;
}

export function squaredPaper(x: Axis, y: Axis): Paper {
  const { left, right, top, bottom } = paperFrame;
  const across = linearScale(x.domain, [left, right], 7);
  const up = linearScale(y.domain, [bottom, top], 6);
  return { x: across, y: up, grid: grid(across, up, x.label, y.label) };
}

function grid(x: Scale, y: Scale, xLabel: string, yLabel: string): Markup {
  const { left, right, top, bottom } = paperFrame;
  const uprights = x.ticks.map((tick) => {
    const at = coordinate(x(tick));
    return svg`<path class="grid" d="M${at} ${top}V${bottom}"/>${svgText('tick middle', at, bottom + 15, tickText(tick))}`;
  });
  const levels = y.ticks.map((tick) => {
    const at = coordinate(y(tick));
    const line = tick === 0 ? 'grid zero' : 'grid';
    return svg`<path class="${line}" d="M${left} ${at}H${right}"/>${svgText('tick end', left - 6, coordinate(y(tick) + 4), tickText(tick))}`;
  });
  return svg`${uprights}${levels}${svgText('axis middle', (left + right) / 2, paperSize.height - 10, xLabel)}
<text class="axis middle" transform="rotate(-90)" x="${-(top + bottom) / 2}" y="13">${yLabel}</text>`;
}

export function svgText(classes: string, x: number | string, y: number | string, words: string): Markup {
  return svg`<text class="${classes}" x="${x}" y="${y}">${words}</text>
`;
}

const tickText = (tick: number): string => fixed(tick, Number.isInteger(tick) ? 0 : 1);
