/**
 * The parallel of an outline: the path of a cutter whose edge is to follow it.
 *
 * A line is moved along its normal, an arc changes its radius and keeps its centre, so that the parallel of an outline
 * of arcs is exact. Where a corner opens, an arc of the distance closes the gap; where it shuts, the neighbours are cut
 * off where they cross. Anything the parallel cannot follow – a notch narrower than the cutter – is refused: every point
 * of a true parallel is as far from the outline as the distance says, and that is checked at the end.
 */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { cos, sin, tan } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import {
  distanceToSegment,
  pointOfArc,
  segmentsOf,
  tangentsOf,
  type Outline,
  type Point,
  type Segment,
  type SegmentArc,
  type Vertex,
} from './outline.ts';

/** A segment moved aside, before its ends are fitted to its neighbours'. */
interface Moved {
  readonly begin: Point;
  readonly end: Point;
  readonly arc?: SegmentArc;
}

const HAIR = 1e-9;
const TURN = 2 * Math.PI;

/** A kink below this is a join that files have rounded [rad]; at 5 mm of offset it makes half a micrometre. */
const SMOOTH = 1e-4;

/** How far the end of a rounded join may lie off its arc [rad]. */
const LOOSE = 1e-2;

function movedAside(segment: Segment, distance: number): Moved | undefined {
  const { from, to, arc } = segment;
  if (arc === undefined) {
    const [along] = tangentsOf(segment);
    const [nx, ny] = [sin(along) * distance, -cos(along) * distance];
    return { begin: { x: from.x + nx, y: from.y + ny }, end: { x: to.x + nx, y: to.y + ny } };
  }
  const radius = arc.radius + Math.sign(arc.sweep) * distance;
  if (radius <= HAIR) return undefined;
  const own = { ...arc, radius };
  return { begin: pointOfArc(own, arc.start), end: pointOfArc(own, arc.start + arc.sweep), arc: own };
}

function lineWithLine(a: Moved, b: Moved): Point[] {
  const [ax, ay] = [a.end.x - a.begin.x, a.end.y - a.begin.y];
  const [bx, by] = [b.end.x - b.begin.x, b.end.y - b.begin.y];
  const cross = ax * by - ay * bx;
  const share = ((b.begin.x - a.begin.x) * by - (b.begin.y - a.begin.y) * bx) / cross;
  return cross === 0 ? [] : [{ x: a.begin.x + share * ax, y: a.begin.y + share * ay }];
}

function lineWithCircle(line: Moved, { x, y, radius }: SegmentArc): Point[] {
  const [dx, dy] = [line.end.x - line.begin.x, line.end.y - line.begin.y];
  const length = hypot(dx, dy);
  const along = ((x - line.begin.x) * dx + (y - line.begin.y) * dy) / length;
  const aside = ((x - line.begin.x) * dy - (y - line.begin.y) * dx) / length;
  const half = Math.sqrt(square(radius) - square(aside));
  if (Number.isNaN(half)) return [];
  return [along - half, along + half].map((at) => ({
    x: line.begin.x + (at * dx) / length,
    y: line.begin.y + (at * dy) / length,
  }));
}

function circleWithCircle(a: SegmentArc, b: SegmentArc): Point[] {
  const apart = hypot(b.x - a.x, b.y - a.y);
  const towards = (square(apart) + square(a.radius) - square(b.radius)) / (2 * apart);
  const half = Math.sqrt(square(a.radius) - square(towards));
  if (Number.isNaN(half)) return [];
  const [ux, uy] = [(b.x - a.x) / apart, (b.y - a.y) / apart];
  return [-half, half].map((side) => ({
    x: a.x + towards * ux - side * uy,
    y: a.y + towards * uy + side * ux,
  }));
}

function meetings(a: Moved, b: Moved): Point[] {
  if (a.arc && b.arc) return circleWithCircle(a.arc, b.arc);
  if (a.arc) return lineWithCircle(b, a.arc);
  return b.arc ? lineWithCircle(a, b.arc) : lineWithLine(a, b);
}

/** How two neighbours follow each other at the corner between them. */
type Join =
  | { readonly way: 'straight on'; readonly at: Point }
  | { readonly way: 'round the corner'; readonly bulge: number }
  | { readonly way: 'cut off'; readonly at: Point };

function joined(corner: Point, turn: number, distance: number, a: Moved, b: Moved): Join | undefined {
  if (Math.abs(turn) < SMOOTH) return { way: 'straight on', at: b.begin };
  if (turn * distance > 0) return { way: 'round the corner', bulge: tan(turn / 4) };
  const found = meetings(a, b).sort(
    (p, q) => hypot(p.x - corner.x, p.y - corner.y) - hypot(q.x - corner.x, q.y - corner.y),
  );
  const [at] = found;
  return at && { way: 'cut off', at };
}

const signedTurn = (from: number, to: number): number => atan2(sin(to - from), cos(to - from));

/** How far along an arc a point lies [rad]; a little below zero or beyond its end where a join was not quite smooth. */
function placeOn({ x, y, start, sweep }: SegmentArc, point: Point): number {
  const angle = atan2(point.y - y, point.x - x);
  const along = (((sweep > 0 ? angle - start : start - angle) % TURN) + TURN) % TURN;
  return along > TURN - LOOSE ? along - TURN : along;
}

/** Bulge of a moved segment between the ends its joins left it; undefined when they lie off it, or the wrong way round. */
function bulgeBetween(arc: SegmentArc | undefined, begin: Point, end: Point): number | undefined {
  if (arc === undefined) return 0;
  const [from, to] = [placeOn(arc, begin), placeOn(arc, end)];
  if (to < from - HAIR || to > Math.abs(arc.sweep) + LOOSE) return undefined;
  return Math.sign(arc.sweep) * tan((to - from) / 4);
}

/** Whether a parallel keeps its distance from the outline it was made from. */
function keepsDistance(parallel: Outline, segments: readonly Segment[], distance: number): boolean {
  const places = segmentsOf(parallel).flatMap(({ from, to, arc }) =>
    arc === undefined
      ? [from, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }]
      : [from, pointOfArc(arc, arc.start + arc.sweep / 2)],
  );
  const least = Math.abs(distance) - Math.max(1e-7, 1e-6 * Math.abs(distance));
  return places.every((place) => segments.every((segment) => distanceToSegment(segment, place) >= least));
}

/** An outline `distance` outside (or, negative, inside) another; undefined where there is none that follows it all. */
export function parallelOutline(outline: Outline, distance: number): Outline | undefined {
  if (distance === 0) return outline;
  const segments = segmentsOf(outline);
  const pieces = segments.map((segment) => movedAside(segment, distance));
  const whole = pieces.filter((piece) => piece !== undefined);
  if (whole.length < pieces.length) return undefined;
  const joins = segments.map((segment, i) => {
    const next = (i + 1) % segments.length;
    const turn = signedTurn(tangentsOf(segment)[1], tangentsOf(segments[next]!)[0]);
    return joined(segment.to, turn, distance, whole[i]!, whole[next]!);
  });
  const parallel: Vertex[] = [];
  for (const [i, piece] of whole.entries()) {
    const [before, after] = [joins[(i + joins.length - 1) % joins.length], joins[i]];
    if (before === undefined || after === undefined) return undefined;
    const begin = before.way === 'round the corner' ? piece.begin : before.at;
    const end = after.way === 'round the corner' ? piece.end : after.at;
    const bulge = bulgeBetween(piece.arc, begin, end);
    if (bulge === undefined) return undefined;
    parallel.push({ x: begin.x, y: begin.y, bulge });
    if (after.way === 'round the corner') parallel.push({ x: end.x, y: end.y, bulge: after.bulge });
  }
  return keepsDistance(parallel, segments, distance) ? parallel : undefined;
}
