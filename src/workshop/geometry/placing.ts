/** Outlines and points moved, turned and seen from the other side. */
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import type { Outline, Point } from './outline.ts';

export const moved = (outline: Outline, x: number, y: number): Outline =>
  outline.map((vertex) => ({ ...vertex, x: vertex.x + x, y: vertex.y + y }));

export function turnedPoint({ x, y }: Point, angle: number): Point {
  const [cosine, sine] = [cos(angle), sin(angle)];
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

/** Turned about the origin, anticlockwise. */
export const turned = (outline: Outline, angle: number): Outline =>
  outline.map((vertex) => ({ ...turnedPoint(vertex, angle), bulge: vertex.bulge }));

/** Left and right exchanged; it still runs anticlockwise. */
export function mirrored(outline: Outline): Outline {
  // Backwards, each way belongs to the vertex it used to lead to; mirroring and running backwards each turn its sign.
  return outline.map((_, i) => {
    const { x, y } = outline[(outline.length - i) % outline.length]!;
    const { bulge } = outline[(2 * outline.length - i - 1) % outline.length]!;
    return { x: -x, y, bulge };
  });
}

export const polar = (radius: number, angle: number): Point => ({
  x: radius * cos(angle),
  y: radius * sin(angle),
});
