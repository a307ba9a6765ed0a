/**
 * Exact area that a circle shares with a region bounded by circular arcs.
 *
 * Green's theorem: area = ½∮(x dy − y dx) along the boundary of the overlap, which consists of those pieces of either
 * outline that lie inside the other. On an arc of centre c, radius r from angle a to b the integral has a closed form.
 */
import { acos, atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

export interface Arc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Start angle [rad]. */
  readonly start: number;
  /** Signed length in angle [rad]; positive runs anticlockwise. */
  readonly sweep: number;
}

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A region: its outline anticlockwise, and a test for a point. */
export interface ArcRegion {
  readonly outline: readonly Arc[];
  contains(x: number, y: number): boolean;
}

const TURN = 2 * Math.PI;

/** ½∮(x dy − y dx) along part of an arc, from a way along it and over a length, both in angle [rad] and along its sense. */
function boundaryIntegral({ x, y, radius: r, start, sweep }: Arc, along: number, length: number): number {
  const sense = Math.sign(sweep);
  const begin = start + sense * along;
  const end = begin + sense * length;
  return 0.5 * r * (r * sense * length + x * (sin(end) - sin(begin)) - y * (cos(end) - cos(begin)));
}

/** How far along an arc (0 to |sweep|) an angle of its circle lies; NaN when the arc does not reach it. */
function alongArc(arc: Arc, angle: number): number {
  const signed = arc.sweep > 0 ? angle - arc.start : arc.start - angle;
  const along = signed - TURN * Math.floor(signed / TURN);
  return along < Math.abs(arc.sweep) ? along : NaN;
}

/** Adds to `cuts` how far along an arc it crosses a circle. */
function addCrossings(arc: Arc, circle: Circle, cuts: number[]): void {
  const dx = circle.x - arc.x;
  const dy = circle.y - arc.y;
  const square = dx * dx + dy * dy;
  const cos =
    (square + arc.radius * arc.radius - circle.radius * circle.radius) / (2 * Math.sqrt(square) * arc.radius);
  if (!(Math.abs(cos) < 1)) return;
  const middle = atan2(dy, dx);
  const half = acos(cos);
  const before = alongArc(arc, middle - half);
  const behind = alongArc(arc, middle + half);
  if (before >= 0) cuts.push(before);
  if (behind >= 0) cuts.push(behind);
}

/**
 * Sum of the boundary integrals of those pieces of an arc, between ascending cuts, that lie inside: each is so wholly or not
 * at all, and its middle tells.
 */
function integralInside(
  arc: Arc,
  cuts: readonly number[],
  inside: (x: number, y: number) => boolean,
): number {
  const sense = Math.sign(arc.sweep);
  let area = 0;
  let begin = 0;
  for (let i = 0; i <= cuts.length; i += 1) {
    const end = cuts[i] ?? Math.abs(arc.sweep);
    const angle = arc.start + (sense * (begin + end)) / 2;
    if (inside(arc.x + arc.radius * cos(angle), arc.y + arc.radius * sin(angle)))
      area += boundaryIntegral(arc, begin, end - begin);
    begin = end;
  }
  return area;
}

/** Few numbers, in place: asked at hundreds of angles, where a sort for any number of them would be felt. */
function ascending(few: number[]): readonly number[] {
  for (let i = 1; i < few.length; i += 1)
    for (let k = i; k > 0 && few[k - 1]! > few[k]!; k -= 1) {
      const lower = few[k]!;
      few[k] = few[k - 1]!;
      few[k - 1] = lower;
    }
  return few;
}

export function sharedArea(region: ArcRegion, circle: Circle): number {
  const reach = circle.radius * circle.radius;
  const inCircle = (x: number, y: number): boolean => square(x - circle.x) + square(y - circle.y) < reach;
  const circleCuts: number[] = [];
  let area = 0;
  for (const arc of region.outline) {
    const cuts: number[] = [];
    addCrossings(arc, circle, cuts);
    for (const along of cuts) {
      const angle = arc.start + Math.sign(arc.sweep) * along;
      const px = arc.x + arc.radius * cos(angle) - circle.x;
      const py = arc.y + arc.radius * sin(angle) - circle.y;
      circleCuts.push((atan2(py, px) + TURN) % TURN);
    }
    area += integralInside(arc, ascending(cuts), inCircle);
  }
  const whole: Arc = { x: circle.x, y: circle.y, radius: circle.radius, start: 0, sweep: TURN };
  return area + integralInside(whole, ascending(circleCuts), (x, y) => region.contains(x, y));
}
