/**
 * Closed outlines of straight lines and circular arcs, as a cutter follows them.
 *
 * A vertex carries the bulge of the way to the next one: tan(sweep/4) of its arc, positive anticlockwise, 0 for a straight
 * line; the same measure that DXF uses, so that an arc stays an arc on its way to the machine. An outline runs
 * anticlockwise and its last vertex leads back to its first.
 *
 *   area = Σ ½(x₀y₁ − x₁y₀) + Σ ½r²(sweep − sin sweep)        exact: polygon and circle segments
 */
import { acos, atan, atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Vertex extends Point {
  readonly bulge: number;
}

export type Outline = readonly Vertex[];

/** A piece of an outline; `arc` is there when it is not straight. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly arc?: SegmentArc;
}

export interface SegmentArc extends Point {
  readonly radius: number;
  readonly start: number;
  /** Signed; positive runs anticlockwise. */
  readonly sweep: number;
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

const TURN = 2 * Math.PI;

/** The arc of a bulge between two points. */
function arcOfBulge(from: Point, to: Point, bulge: number): SegmentArc {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  // Distance of the centre from the chord's middle, over the chord: (1 − b²)/(4b), to the left for an arc anticlockwise.
  const aside = (1 - bulge * bulge) / (4 * bulge);
  const x = (from.x + to.x) / 2 - aside * dy;
  const y = (from.y + to.y) / 2 + aside * dx;
  const radius = (hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { x, y, radius, start: atan2(from.y - y, from.x - x), sweep: 4 * atan(bulge) };
}

export function segmentsOf(outline: Outline): Segment[] {
  return outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    return from.bulge === 0 ? { from, to } : { from, to, arc: arcOfBulge(from, to, from.bulge) };
  });
}

export function outlineArea(outline: Outline): number {
  return segmentsOf(outline).reduce((sum, { from, to, arc }) => {
    const polygon = (from.x * to.y - to.x * from.y) / 2;
    return sum + polygon + (arc ? (square(arc.radius) * (arc.sweep - sin(arc.sweep))) / 2 : 0);
  }, 0);
}

export const pointOfArc = ({ x, y, radius }: SegmentArc, angle: number): Point => ({
  x: x + radius * cos(angle),
  y: y + radius * sin(angle),
});

/** How far along an arc, in (−hair, |sweep|), a direction lies; undefined when the arc does not reach it. */
export function alongSweep({ start, sweep }: SegmentArc, angle: number): number | undefined {
  const signed = sweep > 0 ? angle - start : start - angle;
  const along = ((signed % TURN) + TURN) % TURN;
  if (along <= Math.abs(sweep) + 1e-9) return along;
  return TURN - along < 1e-9 ? 0 : undefined;
}

/** Points that span the outline's box: its vertices, and where its arcs run straight up, down, left or right. */
function extremes({ from, arc }: Segment): Point[] {
  if (arc === undefined) return [from];
  const quarters = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);
  const reached = quarters.filter((angle) => alongSweep(arc, angle) !== undefined);
  return [from, ...reached.map((angle) => pointOfArc(arc, angle))];
}

export function boundsOf(points: readonly Point[]): Bounds {
  return points.reduce<Bounds>(
    ({ left, right, bottom, top }, { x, y }) => ({
      left: Math.min(left, x),
      right: Math.max(right, x),
      bottom: Math.min(bottom, y),
      top: Math.max(top, y),
    }),
    { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity },
  );
}

export const outlineBounds = (outline: Outline): Bounds => boundsOf(segmentsOf(outline).flatMap(extremes));

/** Points along an outline, close enough together that no chord strays from its arc by more than `sag` [m]. */
export function flattened(outline: Outline, sag: number): Point[] {
  return segmentsOf(outline).flatMap(({ from, arc }) => {
    if (arc === undefined) return [from];
    const step = 2 * acos(Math.max(0, 1 - sag / arc.radius));
    const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / step));
    return Array.from({ length: pieces }, (_, i) => pointOfArc(arc, arc.start + (arc.sweep * i) / pieces));
  });
}

/** Direction of travel where a segment begins and where it ends. */
export function tangentsOf({ from, to, arc }: Segment): readonly [begin: number, end: number] {
  if (arc === undefined) {
    const straight = atan2(to.y - from.y, to.x - from.x);
    return [straight, straight];
  }
  const quarter = (Math.sign(arc.sweep) * Math.PI) / 2;
  return [arc.start + quarter, arc.start + arc.sweep + quarter];
}

export function distanceToSegment({ from, to, arc }: Segment, point: Point): number {
  const toEnds = Math.min(hypot(point.x - from.x, point.y - from.y), hypot(point.x - to.x, point.y - to.y));
  if (arc !== undefined) {
    const [dx, dy] = [point.x - arc.x, point.y - arc.y];
    const across = Math.abs(hypot(dx, dy) - arc.radius);
    return alongSweep(arc, atan2(dy, dx)) === undefined ? toEnds : across;
  }
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy);
  if (share <= 0 || share >= 1) return toEnds;
  return hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}
