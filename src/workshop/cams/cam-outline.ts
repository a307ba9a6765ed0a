/**
 * The outline of a cam as arcs: base circle and dwell as they are, the flanks by arcs that stay within a micrometre of
 * the exact curve; and the lift that such an outline gives, so that what was drawn can be tried again.
 */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { tan } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { contactAt, type CamShape, type Follower } from '../../parts/cams/cam-shape.ts';
import { FULL_TURN } from '../../parts/crank-positions.ts';
import { arcsAlong } from '../geometry/biarcs.ts';
import {
  alongSweep,
  segmentsOf,
  type Outline,
  type Point,
  type Segment,
  type Vertex,
} from '../geometry/outline.ts';
import { turnedPoint } from '../geometry/placing.ts';

/** How far an arc may be off the exact flank [m]: a tenth of what a good file leaves. */
const TOLERANCE = 1e-6;

/** No arc longer than this [rad]; some machines balk at half a turn and more. */
const LONGEST_ARC = (2 * Math.PI) / 3;

/** Arcs about the shaft between two angles of the follower. */
function concentric(shape: CamShape, begin: number, end: number): Vertex[] {
  const pieces = Math.max(1, Math.ceil((end - begin) / LONGEST_ARC));
  const bulge = tan((end - begin) / pieces / 4);
  return Array.from({ length: pieces }, (_, i) => {
    const { x, y } = contactAt(shape, begin + ((end - begin) * i) / pieces);
    return { x, y, bulge };
  });
}

/** The outline with the follower's axis along +x where the rise begins; the follower goes round it anticlockwise. */
export function camOutline(shape: CamShape): Outline {
  const { flank, closingFlank, duration } = shape.cam;
  const curve = (angle: number) => contactAt(shape, angle);
  const dwell = duration - flank - closingFlank;
  const rest = FULL_TURN - duration;
  return [
    ...arcsAlong(curve, 0, flank, TOLERANCE),
    ...(dwell > 1e-9 ? concentric(shape, flank, duration - closingFlank) : []),
    ...arcsAlong(curve, duration - closingFlank, duration, TOLERANCE),
    ...(rest > 1e-9 ? concentric(shape, duration, FULL_TURN) : []),
  ];
}

/** How far a flat face square to +x is pushed out by a piece of the outline. */
function flatReach({ from, arc }: Segment): number {
  const convex = arc !== undefined && arc.sweep > 0 && alongSweep(arc, 0) !== undefined;
  return convex ? arc.x + arc.radius : from.x;
}

/** x of the centre of a roller of a radius, at height y, that rests on a point or on an arc; −∞ if it misses them. */
function restOnPoint(point: Point, radius: number, y: number): number {
  const x = point.x + Math.sqrt(square(radius) - square(y - point.y));
  return Number.isNaN(x) ? -Infinity : x;
}

function rollerReach({ from, arc }: Segment, radius: number, y: number): number {
  const onVertex = restOnPoint(from, radius, y);
  if (arc === undefined) return onVertex;
  const convex = arc.sweep > 0;
  const apart = convex ? arc.radius + radius : arc.radius - radius;
  const half = Math.sqrt(square(apart) - square(y - arc.y));
  if (Number.isNaN(half) || apart < 0) return onVertex;
  // Outside of a bulge the centre lies beyond it, in a hollow it lies before it.
  const x = convex ? arc.x + half : arc.x - half;
  return alongSweep(arc, atan2(y - arc.y, x - arc.x)) === undefined ? onVertex : Math.max(onVertex, x);
}

/**
 * Where a follower stands on an outline [m], along its axis, the outline turned back by an angle: the face of a flat one,
 * the centre of a roller. Less the reading on the base circle this is the lift.
 */
export function followerReach(outline: Outline, follower: Follower, angle: number): number {
  const inFrontOf = outline.map((vertex) => ({ ...turnedPoint(vertex, -angle), bulge: vertex.bulge }));
  const segments = segmentsOf(inFrontOf);
  const reaches = segments.map((segment) =>
    follower.face === 'flat' ? flatReach(segment) : rollerReach(segment, follower.radius, follower.offset),
  );
  return reaches.reduce((a, b) => Math.max(a, b), -Infinity);
}
