/**
 * The indicator diagram: pressure against volume over one settled turn, with the four events and the loss-free diagram of
 * the first working end. Further ends are drawn behind it.
 */
import type { EngineFacts, SettledCycle } from '../../run/result.ts';
import { valueAt } from '../../verdict/cycle-reading.ts';
import { svg, type Markup } from '../html/markup.ts';
import { idealDiagram } from './ideal-diagram.ts';
import { paperFrame, paperSize, svgText } from './paper.ts';
import { loopPath, pressureVolumePaper, type PressureVolumePaper } from './pressure-volume.ts';
import { coordinate, pathThrough } from './scale.ts';

export function indicatorDiagram(cycle: SettledCycle, engine: EngineFacts, alternative: string): Markup {
  const { ends } = cycle.profile;
  const room = engine.atmosphericPressure;
  const paper = pressureVolumePaper(
    ends.map((end) => [end, room]),
    [0, engine.supplyPressure - room],
  );
  const [first, ...others] = ends;
  const ideal = idealDiagram(engine, first).map(([v, p]) => paper.at(v, p - room));
  return svg`<svg class="drawing" viewBox="0 0 ${paperSize.width} ${paperSize.height}" role="img" aria-label="${alternative}">
    ${paper.grid}
    <path class="ideal" d="${pathThrough(ideal)}" />
    ${others.map((end) => svg`<path class="further" d="${loopPath(end, room, paper)}" />`)}
    <path class="loop" d="${loopPath(first, room, paper)}" />
    ${eventMarks(eventPoints(cycle), room, paper)}
  </svg>`;
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

interface PlacedName {
  readonly name: string;
  /** Whether it ends or begins at x. */
  readonly side: 'end' | 'start';
  readonly x: number;
  readonly y: number;
}

/** About how wide a letter is, how far lines have to be apart, and how far names stand from their marks [px]. */
const LETTER = 7.5;
const LINE = 15;
const AWAY = 8;

/**
 * Names stand inside the loop, where there is room on the paper: left of and below marks on the way out, right of and above
 * those on the way back.
 */
function eventMarks(events: readonly EventPoint[], room: number, { at }: PressureVolumePaper): Markup[] {
  const names: PlacedName[] = [];
  return events.map(({ name, angle, volume, pressure }) => {
    const [x, y] = at(volume, pressure - room);
    const outward = angle < Math.PI;
    const below = outward && y + 24 < paperFrame.bottom;
    const width = LETTER * name.length + AWAY;
    const side = outward
      ? x - width > paperFrame.left
        ? 'end'
        : 'start'
      : x + width < paperFrame.right
        ? 'start'
        : 'end';
    const wanted = {
      name,
      side,
      x: x + (side === 'end' ? -AWAY : AWAY),
      y: y + (below ? 18 : -AWAY),
    } as const;
    const placed = movedClear(wanted, names);
    names.push(placed);
    const label = svgText(`label ${side}`, coordinate(placed.x), coordinate(placed.y), name);
    return svg`<circle class="event" cx="${coordinate(x)}" cy="${coordinate(y)}" r="4.5"/>${label}`;
  });
}

/** Upwards until it covers no other name. */
function movedClear(name: PlacedName, others: readonly PlacedName[]): PlacedName {
  const extent = ({ name: { length }, side, x }: PlacedName): readonly [number, number] =>
    side === 'end' ? [x - LETTER * length, x] : [x, x + LETTER * length];
  const [left, right] = extent(name);
  const covered = others.some((other) => {
    const [from, to] = extent(other);
    return from < right && left < to && Math.abs(other.y - name.y) < LINE;
  });
  return covered ? movedClear({ ...name, y: name.y - LINE }, others) : name;
}
