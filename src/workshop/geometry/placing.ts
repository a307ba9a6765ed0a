/** Outlines and points moved, turned and seen from the other side. */
import type { Outline, Point } from './outline.ts';

export const moved = (outline: Outline, x: number, y: number): Outline =>
  outline.map((vertex) => ({ ...vertex, x: vertex.x + x, y: vertex.y + y }));

export function turnedPoint({ x, y }: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
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
  x: radius * Math.cos(angle),
  y: radius * Math.sin(angle),
});
