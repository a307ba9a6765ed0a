/** Lines and words round a shape: centre lines, dimensions, leaders. Sizes as on paper, drawn at full scale. */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import type { Point } from '../geometry/outline.ts';
import { polar } from '../geometry/placing.ts';
import type { Anchor, Layer, Mark } from './drawing.ts';

const TEXT = 2.5e-3;
const ARROW = 2.2e-3;
const BEYOND = 1.5e-3;

export const line = (layer: Layer, from: Point, to: Point): Mark => ({ type: 'line', layer, from, to });

export const words = (
  layer: Layer,
  at: Point,
  text: string,
  anchor: Anchor = 'middle',
  { angle = 0, height = TEXT }: { readonly angle?: number; readonly height?: number } = {},
): Mark => ({ type: 'text', layer, at, text, height, anchor, angle });

const plus = (a: Point, b: Point, share = 1): Point => ({ x: a.x + share * b.x, y: a.y + share * b.y });

/** Two centre lines through a point. */
export function cross(centre: Point, reach: number): Mark[] {
  const { x, y } = centre;
  return [
    line('centre', { x: x - reach, y }, { x: x + reach, y }),
    line('centre', { x, y: y - reach }, { x, y: y + reach }),
  ];
}

/** An arrowhead whose tip is at a point, pointing along a direction [rad]. */
function arrowhead(tip: Point, direction: number): Mark[] {
  const spread = 0.16;
  return [direction + Math.PI - spread, direction + Math.PI + spread].map((back) =>
    line('dimension', tip, plus(tip, polar(ARROW, back))),
  );
}

/** Keeps words from standing on their head. */
const upright = (angle: number): number => {
  const rest = atan2(sin(angle), cos(angle));
  if (rest > Math.PI / 2 + 1e-6) return rest - Math.PI;
  return rest < -Math.PI / 2 + 1e-6 ? rest + Math.PI : rest;
};

/**
 * A length between two points, measured along a direction; its line runs `offset` to the left of the first point, looking
 * that way.
 */
export function dimension(from: Point, to: Point, direction: number, offset: number, text: string): Mark[] {
  const along = polar(1, direction);
  const left = polar(1, direction + Math.PI / 2);
  const length = (to.x - from.x) * along.x + (to.y - from.y) * along.y;
  const begin = plus(from, left, offset);
  const end = plus(begin, along, length);
  const towards = Math.sign(length) > 0 ? direction : direction + Math.PI;
  const extension = (foot: Point, head: Point): Mark[] => {
    const way = hypot(head.x - foot.x, head.y - foot.y);
    if (way < 1e-9) return [];
    const unit = { x: (head.x - foot.x) / way, y: (head.y - foot.y) / way };
    return [line('dimension', plus(foot, unit, 0.6e-3), plus(head, unit, BEYOND))];
  };
  const short = Math.abs(length) < 3 * ARROW;
  const outside = short ? plus(end, polar(1, towards), 2 * ARROW) : end;
  const angle = upright(direction);
  // Words stand above the line as read, and beside it where there is no room between the arrows.
  const above = polar(0.9e-3, angle + Math.PI / 2);
  const room = text.length * TEXT * 0.6;
  const besides = Math.abs(length) < room + 1e-3;
  const middle = besides
    ? plus(outside, polar(1, towards), room / 2 + 0.5e-3)
    : { x: (begin.x + end.x) / 2, y: (begin.y + end.y) / 2 };
  const far = besides ? plus(outside, polar(1, towards), room + 1e-3) : outside;
  return [
    ...extension(from, begin),
    ...extension(to, end),
    line('dimension', short ? plus(begin, polar(1, towards), -2 * ARROW) : begin, far),
    ...arrowhead(begin, short ? towards : towards + Math.PI),
    ...arrowhead(end, short ? towards + Math.PI : towards),
    words('dimension', plus(middle, above), text, 'middle', { angle }),
  ];
}

/** A radius or diameter: an arrow from outside onto a circle at an angle, with the words at its foot. */
export function leader(centre: Point, radius: number, angle: number, length: number, text: string): Mark[] {
  const tip = plus(centre, polar(radius, angle));
  const knee = plus(centre, polar(radius + length, angle));
  const right = cos(angle) >= 0;
  const foot = { x: knee.x + (right ? 3e-3 : -3e-3), y: knee.y };
  return [
    line('dimension', tip, knee),
    line('dimension', knee, foot),
    ...arrowhead(tip, angle + Math.PI),
    words(
      'dimension',
      { x: foot.x + (right ? 0.8e-3 : -0.8e-3), y: foot.y - 0.9e-3 },
      text,
      right ? 'start' : 'end',
    ),
  ];
}

/** Words outside a round line, beginning or ending at a point according to the side they are on. */
function wordsAround(at: Point, direction: number, text: string): Mark[] {
  const rightwards = cos(direction);
  const anchor: Anchor = rightwards > 0.35 ? 'start' : rightwards < -0.35 ? 'end' : 'middle';
  const upwards = sin(direction);
  const drop = upwards < -0.35 ? -TEXT : upwards > 0.35 ? 0 : -TEXT / 2;
  return [words('dimension', { x: at.x, y: at.y + drop }, text, anchor)];
}

/** An arrow along an arc, to say which way something turns. */
export function turningArrow(
  centre: Point,
  radius: number,
  from: number,
  sweep: number,
  text: string,
): Mark[] {
  const end = from + sweep;
  return [
    { type: 'arc', layer: 'reference', arc: { ...centre, radius, start: from, sweep } },
    ...arrowhead(plus(centre, polar(radius, end)), end + (Math.sign(sweep) * Math.PI) / 2),
    ...wordsAround(plus(centre, polar(radius + 1.5e-3, from + sweep / 2)), from + sweep / 2, text),
  ];
}
