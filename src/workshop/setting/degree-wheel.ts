/**
 * A degree wheel for the flywheel, to be printed at full size. The pointer stands still and the wheel turns, so that the
 * numbers run against the turning: the outer ring for a shaft that turns clockwise as you look at it, the inner one for
 * the other way. The events of the engine are marked on both.
 */
import { forwardAngle } from '../../parts/crank-positions.ts';
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { cross, line, turningArrow, words } from '../drawing/marks.ts';
import { degrees } from '../drawing/words.ts';
import { polar } from '../geometry/placing.ts';
import { circle } from '../geometry/shapes.ts';
import type { SettingEvent } from './events.ts';

const OUTER = 90e-3;
const INNER = 56e-3;
const UP = Math.PI / 2;
const DEGREE = Math.PI / 180;
const ORIGIN = { x: 0, y: 0 };

const tickLength = (degree: number): number => (degree % 10 === 0 ? 6e-3 : degree % 5 === 0 ? 4.5e-3 : 3e-3);

/** A ring of ticks and numbers, read along its outer edge; `sense` +1 counts anticlockwise. */
function ring(radius: number, sense: number): Mark[] {
  const ticks = Array.from({ length: 360 }, (_, degree) => {
    const direction = UP + sense * degree * DEGREE;
    return line('engrave', polar(radius - tickLength(degree), direction), polar(radius, direction));
  });
  const numbers = Array.from({ length: 36 }, (_, i) => {
    const direction = UP + sense * i * 10 * DEGREE;
    return words('engrave', polar(radius - 9.5e-3, direction), String(10 * i), 'middle', {
      angle: direction - UP,
      height: 2.4e-3,
    });
  });
  return [{ type: 'circle', layer: 'engrave', centre: ORIGIN, radius }, ...ticks, ...numbers];
}

function eventMarks(events: readonly SettingEvent[], radius: number, sense: number): Mark[] {
  return events.flatMap(({ short, angle }) => {
    const direction = UP + sense * forwardAngle(0, angle);
    return [
      line('reference', polar(radius - 17e-3, direction), polar(radius, direction)),
      words('reference', polar(radius - 20.5e-3, direction), short, 'middle', {
        angle: direction - UP,
        height: 2.6e-3,
      }),
    ];
  });
}

export function degreeWheel(events: readonly SettingEvent[]): PartDrawing {
  return {
    id: 'degree-wheel',
    name: 'Degree wheel',
    quantity: 1,
    stock: 'paper on card or sheet',
    edge: circle(OUTER + 2e-3),
    openings: [],
    holes: [],
    marks: [
      ...cross(ORIGIN, 12e-3),
      ...ring(OUTER, 1),
      ...ring(INNER, -1),
      ...eventMarks(events, OUTER, 1),
      ...eventMarks(events, INNER, -1),
      ...turningArrow(ORIGIN, 24e-3, UP + 0.5, -1, 'outer ring'),
      ...turningArrow(ORIGIN, 17e-3, -UP - 0.5, 1, 'inner ring'),
    ],
    notes: [
      'Glue it to card or sheet, cut the middle to your shaft, and fix it true: a wheel 0.5 mm off centre reads 0.3° wrong.',
      'Outer ring for a shaft that turns clockwise as you look at the wheel, inner ring for the other way.',
      `Marked: ${events.map(({ short, name, angle }) => `${short} ${name} ${degrees(forwardAngle(0, angle))}`).join(', ')}.`,
    ],
    facts: [],
  };
}
