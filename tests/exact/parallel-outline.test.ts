/**
 * The path of a cutter: areas of parallels in closed form (Steiner: A + P k + π k² outside a convex shape), arcs exact,
 * free shapes against the offset of a general polygon library, and refusal where no path follows the whole shape.
 */
import { areaPathsD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import {
  flattened,
  outlineArea,
  outlineBounds,
  segmentsOf,
  type Outline,
} from '../../src/workshop/geometry/outline.ts';
import { parallelOutline } from '../../src/workshop/geometry/offset.ts';
import { mirrored, moved, turned } from '../../src/workshop/geometry/placing.ts';
import { arcSlot, circle, keyedBore, polygon, roundedRectangle } from '../../src/workshop/geometry/shapes.ts';
import { drawn, fileOf, shippedSpec } from '../support/drawn.ts';
import { shapesOn } from '../support/read-dxf.ts';

const KERF = 0.6e-3;

const parallel = (outline: Outline, distance: number): Outline => {
  const found = parallelOutline(outline, distance);
  if (found === undefined) throw new Error('no parallel');
  return found;
};

const perimeter = (outline: Outline): number =>
  segmentsOf(outline).reduce(
    (sum, { from, to, arc }) =>
      sum + (arc ? arc.radius * Math.abs(arc.sweep) : Math.hypot(to.x - from.x, to.y - from.y)),
    0,
  );

const convex: readonly (readonly [string, Outline])[] = [
  ['a disc', circle(20e-3, { x: 3e-3, y: -5e-3 })],
  ['a sharp rectangle', roundedRectangle(40e-3, 25e-3, 0)],
  ['a rounded rectangle, turned', turned(roundedRectangle(40e-3, 25e-3, 4e-3), 0.3)],
];

describe.each(convex)('%s', (_name, outline) => {
  it('grows by P k + π k²', () => {
    const grown = outlineArea(outline) + perimeter(outline) * KERF + Math.PI * KERF ** 2;
    expect(outlineArea(parallel(outline, KERF))).toBeCloseTo(grown, 15);
  });
});

it('comes back when it is moved out and in again', () => {
  const disc = circle(20e-3);
  expect(outlineArea(parallel(parallel(disc, KERF), -KERF))).toBeCloseTo(outlineArea(disc), 15);
});

it('a slot keeps its centres; only its radii change', () => {
  const slot = arcSlot(30e-3, 6e-3, 0.3, 2.5);
  const path = parallel(slot, -KERF);
  for (const [i, { arc }] of segmentsOf(path).entries()) {
    const own = segmentsOf(slot)[i]?.arc;
    expect(arc?.x).toBeCloseTo(own?.x ?? NaN, 15);
    expect(arc?.y).toBeCloseTo(own?.y ?? NaN, 15);
    expect(Math.abs((arc?.radius ?? NaN) - (own?.radius ?? NaN))).toBeCloseTo(KERF, 15);
  }
  // Spine times width, and a circle: 2.5 rad on 30 mm.
  expect(outlineArea(path)).toBeCloseTo(2.5 * 30e-3 * 4.8e-3 + Math.PI * 2.4e-3 ** 2, 15);
});

const cam =
  shapesOn(fileOf(drawn(shippedSpec('cider-press.yaml')), 'exhaust-cam.dxf'), 'CUT-OUTSIDE')[0] ?? [];

describe.each<[string, Outline, number]>([
  ['a cam, outside', cam, KERF],
  ['a cam, inside', cam, -KERF],
  ['a keyed bore, inside', keyedBore(12e-3, 4e-3, 1.8e-3), -KERF],
  [
    'an L, outside',
    polygon([
      [0, 0],
      [0.03, 0],
      [0.03, 0.01],
      [0.01, 0.01],
      [0.01, 0.02],
      [0, 0.02],
    ]),
    KERF,
  ],
])('%s', (_name, outline, distance) => {
  it('as the polygon library has it', () => {
    const path = flattened(outline, 1e-8).map(({ x, y }) => ({ x: x * 1e3, y: y * 1e3 }));
    const inflated = inflatePathsD([path], distance * 1e3, JoinType.Round, EndType.Polygon, 2, 6, 1e-5);
    const area = outlineArea(parallel(outline, distance)) * 1e6;
    expect(Math.abs(areaPathsD(inflated) / area - 1)).toBeLessThan(5e-6);
  });
});

it('refuses a slot that the cut is too wide for, and a notch it does not reach', () => {
  expect(parallelOutline(arcSlot(30e-3, 1e-3, 0, 1), -KERF)).toBeUndefined();
  expect(parallelOutline(circle(0.5e-3), -KERF)).toBeUndefined();
  const notched = polygon([
    [0, 0],
    [0.03, 0],
    [0.03, 0.02],
    [0.0155, 0.02],
    [0.0155, 0.01],
    [0.0145, 0.01],
    [0.0145, 0.02],
    [0, 0.02],
  ]);
  expect(parallelOutline(notched, KERF)).toBeUndefined();
});

it('an outline seen from the other side still runs anticlockwise', () => {
  const other = mirrored(moved(cam, 1e-3, 2e-3));
  expect(outlineArea(other)).toBeCloseTo(outlineArea(cam), 12);
  expect(outlineBounds(other).left).toBeCloseTo(-outlineBounds(cam).right - 1e-3, 12);
});
