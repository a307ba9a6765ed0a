/**
 * The indicator diagram: pressure against volume over one settled turn, with the four events and the loss-free diagram of
 * the first working end. Further ends are drawn behind it.
 */
import type { EndProfile, EngineFacts, SettledCycle } from '../../run/result.ts';
import { fixed } from '../../verdict/figures.ts';
import { valueAt } from '../../verdict/cycle-reading.ts';
import { svg, type Markup } from '../html/markup.ts';
import { idealDiagram } from './ideal-diagram.ts';
import { coordinate, linearScale, pathThrough, type Scale } from './scale.ts';

const WIDTH = 420;
const HEIGHT = 340;
const frame = { left: 46, right: 410, top: 12, bottom: 294 };

interface Paper {
  readonly x: Scale;
  readonly y: Scale;
  readonly at: (volume: number, pressure: number) => readonly [number, number];
}

export function indicatorDiagram(cycle: SettledCycle, engine: EngineFacts, alternative: string): Markup {
  const paper = paperFor(cycle, engine);
  const [first, ...others] = cycle.profile.ends;
  return svg`<svg class="drawing" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${alternative}">
    ${grid(paper)}
    <path class="ideal" d="${pathThrough(idealDiagram(engine, first).map(([v, p]) => paper.at(v, p)))}" />
    ${others.map((end) => svg`<path class="further" d="${loop(end, paper)}Z" />`)}
    <path class="loop" d="${loop(first, paper)}Z" />
    ${eventPoints(cycle).map((event) => eventMark(event, paper))}
  </svg>`;
}

function paperFor({ profile }: SettledCycle, engine: EngineFacts): Paper {
  const gauge = (pressure: number): number => (pressure - engine.atmosphericPressure) / 1e5;
  const pressures = [
    ...profile.ends.flatMap(({ pressure }) => Array.from(pressure)),
    engine.supplyPressure,
    engine.atmosphericPressure,
  ].map(gauge);
  const low = pressures.reduce((a, b) => Math.min(a, b));
  const high = pressures.reduce((a, b) => Math.max(a, b));
  const margin = 0.06 * (high - low);
  const most = Math.max(...profile.ends.map((end) => end.clearanceVolume + end.sweptVolume)) * 1e6;
  const x = linearScale([0, 1.04 * most], [frame.left, frame.right], 7);
  const y = linearScale([low - margin, high + margin], [frame.bottom, frame.top], 6);
  return { x, y, at: (volume, pressure) => [x(volume * 1e6), y(gauge(pressure))] };
}

function grid({ x, y }: Paper): Markup {
  const { left, right, top, bottom } = frame;
  const uprights = x.ticks.map((tick) => {
    const at = coordinate(x(tick));
    return svg`<path class="grid" d="M${at} ${top}V${bottom}"/>${text('tick middle', at, bottom + 15, tickText(tick))}`;
  });
  const levels = y.ticks.map((tick) => {
    const at = coordinate(y(tick));
    const line = tick === 0 ? 'grid zero' : 'grid';
    return svg`<path class="${line}" d="M${left} ${at}H${right}"/>${text('tick end', left - 6, coordinate(y(tick) + 4), tickText(tick))}`;
  });
  return svg`${uprights}${levels}${text('axis middle', (left + right) / 2, HEIGHT - 10, 'Cylinder volume [cm³]')}
<text class="axis middle" transform="rotate(-90)" x="${-(top + bottom) / 2}" y="13">Pressure [bar gauge]</text>`;
}

function text(classes: string, x: number | string, y: number | string, words: string): Markup {
  return svg`<text class="${classes}" x="${x}" y="${y}">${words}</text>
`;
}

const tickText = (tick: number): string => fixed(tick, Number.isInteger(tick) ? 0 : 1);

function loop({ volume, pressure }: EndProfile, { at }: Paper): string {
  return pathThrough(Array.from(volume, (v, i) => at(v, pressure[i] ?? NaN)));
}

export interface EventPoint {
  readonly name: string;
  readonly angle: number;
  readonly volume: number;
  readonly pressure: number;
}

/** The four events with the state of the cylinder, in the order of the turn. */
export function eventPoints({ events, profile }: SettledCycle): EventPoint[] {
  const [end] = profile.ends;
  const named: [string, number][] = [
    ['admission', events.admission],
    ['cut-off', events.cutOff],
    ['release', events.release],
    ['compression', events.compression],
  ];
  return named.map(([name, angle]) => ({
    name,
    angle,
    volume: valueAt(end.volume, angle),
    pressure: valueAt(end.pressure, angle),
  }));
}

/** Labels stand inside the loop: left of and below marks on the way out, right of and above those on the way back. */
function eventMark({ name, angle, volume, pressure }: EventPoint, { at }: Paper): Markup {
  const [x, y] = at(volume, pressure);
  const outward = angle < Math.PI;
  const below = outward && y + 24 < frame.bottom;
  const label = text(
    `label ${outward ? 'end' : 'start'}`,
    coordinate(x + (outward ? -8 : 8)),
    coordinate(y + (below ? 18 : -8)),
    name,
  );
  return svg`<circle class="event" cx="${coordinate(x)}" cy="${coordinate(y)}" r="4.5"/>${label}`;
}
