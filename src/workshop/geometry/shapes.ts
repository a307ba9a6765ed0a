/** Outlines of the shapes that plates are made of. All anticlockwise; lengths in metres, angles in radians. */
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { tan } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { Outline, Point } from './outline.ts';
import { polar } from './placing.ts';

/** tan(sweep/4) of a half and of a quarter turn. */
const HALF = 1;
const QUARTER = tan(Math.PI / 8);

export const circle = (radius: number, { x, y }: Point = { x: 0, y: 0 }): Outline => [
  { x: x + radius, y, bulge: HALF },
  { x: x - radius, y, bulge: HALF },
];

/** A rectangle about the origin with its corners rounded. */
export function roundedRectangle(width: number, height: number, corner: number): Outline {
  const [x, y] = [width / 2, height / 2];
  if (corner <= 0)
    return [
      { x, y: -y, bulge: 0 },
      { x, y, bulge: 0 },
      { x: -x, y, bulge: 0 },
      { x: -x, y: -y, bulge: 0 },
    ];
  const [u, v] = [x - corner, y - corner];
  return [
    { x, y: -v, bulge: 0 },
    { x, y: v, bulge: QUARTER },
    { x: u, y, bulge: 0 },
    { x: -u, y, bulge: QUARTER },
    { x: -x, y: v, bulge: 0 },
    { x: -x, y: -v, bulge: QUARTER },
    { x: -u, y: -y, bulge: 0 },
    { x: u, y: -y, bulge: QUARTER },
  ];
}

/** A slot along an arc about the origin, its ends half round; `from` is the centre of the clockwise end. */
export function arcSlot(pitchRadius: number, width: number, from: number, length: number): Outline {
  const [outer, inner] = [pitchRadius + width / 2, pitchRadius - width / 2];
  const pieces = Math.max(1, Math.ceil(length / ((2 * Math.PI) / 3)));
  const bulge = tan(length / pieces / 4);
  const along = (radius: number, sign: number) =>
    Array.from({ length: pieces }, (_, i) => ({
      ...polar(radius, sign > 0 ? from + (length * i) / pieces : from + length - (length * i) / pieces),
      bulge: sign * bulge,
    }));
  return [
    ...along(outer, 1),
    { ...polar(outer, from + length), bulge: HALF },
    ...along(inner, -1),
    { ...polar(inner, from), bulge: HALF },
  ];
}

/** A bore with a keyway pointing up: the key's width, and how far the keyway reaches beyond the bore. */
export function keyedBore(diameter: number, keyWidth: number, keyDepth: number): Outline {
  const radius = diameter / 2;
  const half = keyWidth / 2;
  const shoulder = Math.sqrt(square(radius) - square(half));
  const top = radius + keyDepth;
  const sweep = 2 * Math.PI - 2 * asin(half / radius);
  // In two arcs: the way round is longer than half a turn.
  const bulge = tan(sweep / 8);
  return [
    { x: half, y: shoulder, bulge: 0 },
    { x: half, y: top, bulge: 0 },
    { x: -half, y: top, bulge: 0 },
    { x: -half, y: shoulder, bulge },
    { x: 0, y: -radius, bulge },
  ];
}

/** A ring's outer edge and hole are two outlines; a polygon's corners are given one by one. */
export const polygon = (corners: readonly (readonly [x: number, y: number])[]): Outline =>
  corners.map(([x, y]) => ({ x, y, bulge: 0 }));
