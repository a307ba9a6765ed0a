/**
 * A smooth curve as circular arcs that join without a kink, each stretch of it by two (biarcs).
 *
 * With ends P₀, P₁, unit tangents T₀, T₁, v = P₁ − P₀ and equal tangent lengths d, the arcs meet in
 *
 *   J = ½(P₀ + P₁ + d(T₀ − T₁)),   v·v − 2d v·(T₀ + T₁) + 2d²(T₀·T₁ − 1) = 0
 *
 * A stretch is halved until the curve stays within the tolerance of its arcs. Source: geometry of the two triangles; the
 * construction is common to books on curve fitting (Bolton 1975, name from memory).
 */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin, tan } from '../../numerics/elementary/trigonometric.ts';
import { distanceToSegment, segmentsOf, type Point, type Vertex } from './outline.ts';

export interface CurvePoint extends Point {
  /** Direction of travel [rad]. */
  readonly direction: number;
}

export type Curve = (parameter: number) => CurvePoint;

/** Bulge of the arc that leaves `from` in a direction and ends at `to`. */
function bulgeFrom(from: Point, direction: number, to: Point): number {
  const chord = atan2(to.y - from.y, to.x - from.x);
  const turn = atan2(sin(chord - direction), cos(chord - direction));
  return tan(turn / 2);
}

function tangentLength(from: CurvePoint, to: CurvePoint): number {
  const [vx, vy] = [to.x - from.x, to.y - from.y];
  const [sx, sy] = [cos(from.direction) + cos(to.direction), sin(from.direction) + sin(to.direction)];
  const along = vx * sx + vy * sy;
  const square = vx * vx + vy * vy;
  const bend = 2 * (1 - cos(to.direction - from.direction));
  // The positive root of bend·d² + 2·along·d − square = 0, written so that it holds without a bend too.
  return square / (along + Math.sqrt(along * along + bend * square));
}

function biarc(from: CurvePoint, to: CurvePoint): Vertex[] {
  const d = tangentLength(from, to);
  const joint = {
    x: (from.x + to.x + d * (cos(from.direction) - cos(to.direction))) / 2,
    y: (from.y + to.y + d * (sin(from.direction) - sin(to.direction))) / 2,
  };
  const backwards = bulgeFrom(to, to.direction + Math.PI, joint);
  return [
    { x: from.x, y: from.y, bulge: bulgeFrom(from, from.direction, joint) },
    { ...joint, bulge: -backwards },
  ];
}

/** How far the curve strays from its two arcs between its ends [m]. */
function straying(curve: Curve, begin: number, end: number, arcs: readonly Vertex[]): number {
  const pieces = segmentsOf([...arcs, { ...curve(end), bulge: 0 }]).slice(0, -1);
  const places = [1, 2, 3, 4, 5, 6, 7].map((i) => curve(begin + ((end - begin) * i) / 8));
  return Math.max(
    ...places.map((place) => Math.min(...pieces.map((piece) => distanceToSegment(piece, place)))),
  );
}

const DEEPEST = 12;

/** Vertices from the curve's begin up to its end, which itself is left to what follows. */
export function arcsAlong(curve: Curve, begin: number, end: number, tolerance: number, depth = 0): Vertex[] {
  const arcs = biarc(curve(begin), curve(end));
  if (depth >= DEEPEST || straying(curve, begin, end, arcs) <= tolerance) return arcs;
  const middle = (begin + end) / 2;
  return [
    ...arcsAlong(curve, begin, middle, tolerance, depth + 1),
    ...arcsAlong(curve, middle, end, tolerance, depth + 1),
  ];
}
