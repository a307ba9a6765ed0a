/**
 * The drawn disc over the drawn plate opens what the simulator reckons with: both are read back from their DXF files by
 * an independent reader, the disc is turned as the crank turns it, and the overlap of slot and hole is measured by a
 * general library of polygons.
 */
import { areaPathsD, FillRule, intersectD, type PathD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import type { EngineSpec } from '../../src/index.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import type { RotaryDisc } from '../../src/parts/valve-gears/rotary-disc-parameters.ts';
import { boundsOf, flattened, type Outline } from '../../src/workshop/geometry/outline.ts';
import { turned } from '../../src/workshop/geometry/placing.ts';
import { drawn, fileOf, shippedSpec, withGear } from '../support/drawn.ts';
import { shapesOn } from '../support/read-dxf.ts';

const DEGREE = Math.PI / 180;
const MM = 1e3;

const discOf = (spec: EngineSpec): RotaryDisc => spec.valve_gear.values as unknown as RotaryDisc;

/** Corners in millimetres, a twentieth of a micrometre from the arcs. */
const path = (outline: Outline): PathD =>
  flattened(outline, 5e-8).map(({ x, y }) => ({ x: x * MM, y: y * MM }));

/** Distance of a shape's middle from the shaft [m]. */
function distance(outline: Outline): number {
  const { left, right, bottom, top } = boundsOf(flattened(outline, 1e-6));
  return Math.hypot((left + right) / 2, (bottom + top) / 2);
}

function shapes(text: string): Outline[] {
  return ['CUT-INSIDE', 'DRILL'].flatMap((layer) => shapesOn(text, layer));
}

/** Uncovered area of one track's hole [mm²] at a crank angle, out of the files. */
function overlapOf(spec: EngineSpec, which: 'admission' | 'exhaust'): (crankAngle: number) => number {
  const files = drawn(spec);
  const { slots, body_advance, plates, [which]: track } = discOf(spec);
  const sense = plates.turning === 'clockwise' ? 1 : -1;
  // Slots have no middle of their own: they are found by the hole they come to pass.
  const openings = shapes(fileOf(files, 'disc.dxf')).filter(
    (outline) => outline.length > 5 || distance(outline) > 1e-3,
  );
  const hole = shapes(fileOf(files, 'front-plate.dxf')).find(
    (outline) => Math.abs(distance(outline) - track.pitch_radius) < 1e-6,
  );
  if (hole === undefined) throw new Error(`no ${which} hole in the plate`);
  const still = path(turned(hole, sense * body_advance));
  return (crankAngle) => {
    const moving = openings.map((outline) => path(turned(outline, (-sense * crankAngle) / slots)));
    return Math.abs(areaPathsD(intersectD(moving, [still], FillRule.NonZero, 6)));
  };
}

const disc = shippedSpec('cider-press-disc.yaml');

describe.each<[string, EngineSpec]>([
  ['one slot', disc],
  ['three slots', shippedSpec('apple-washer-geared-disc.yaml')],
  ['a disc that turns the other way', withGear(disc, { plates: { turning: 'anticlockwise' } })],
  [
    'holes elsewhere in the plates',
    withGear(disc, { plates: { admission_hole_at: 0.3, exhaust_hole_at: 2.1 } }),
  ],
  ['plates turned against the disc', withGear(disc, { body_advance: 8 * DEGREE })],
])('%s', (_what, spec) => {
  it.each(['admission', 'exhaust'] as const)('%s area', (which) => {
    const overlap = overlapOf(spec, which);
    const { discharge_coefficient: cd, [which]: own } = discOf(spec);
    const port = spec.valve_gear.build(partContext(spec)).ports.find(({ role }) => role === which);
    const largest = (Math.PI / 4) * (own.hole_diameter * MM) ** 2;
    for (let degree = 0; degree < 360; degree += 11) {
      const angle = degree * DEGREE;
      // Two equal faces one behind the other let through as much as one of 1/√2 the area.
      const perFace = ((port?.effectiveArea(angle, 0) ?? NaN) / cd) * MM ** 2 * Math.SQRT2;
      // 1e-4: the table that the simulator reads, and chords for arcs.
      expect(Math.abs(overlap(angle) - perFace) / largest, `${degree}°`).toBeLessThan(1e-4);
    }
  });
});
