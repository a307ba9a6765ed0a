/**
 * Slide valve over port face, and cylinder face over standing face, as drawn: read back from their DXF files, moved as
 * the crank moves them, their openings measured by a library of polygons and compared with the simulator's.
 */
import { areaPathsD, differenceD, FillRule, intersectD, type PathD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { partContext } from '../../src/parts/engine-description.ts';
import { flattened, outlineBounds, type Outline } from '../../src/workshop/geometry/outline.ts';
import { moved, turned } from '../../src/workshop/geometry/placing.ts';
import type { FlatSlideValve } from '../../src/parts/valve-gears/flat-slide-valve.ts';
import { swing } from '../../src/parts/oscillating-travel.ts';
import {
  oscillatingTrain,
  type OscillatingCylinder,
} from '../../src/parts/valve-gears/oscillating-cylinder-parameters.ts';
import { displacementLaw } from '../../src/parts/valve-gears/slide-valve.ts';
import { slideValveOf } from '../../src/parts/valve-gears/slide-valve-parameters.ts';
import { drawn, fileOf, shippedSpec, withGear } from '../support/drawn.ts';
import { closedOn, shapesOn } from '../support/read-dxf.ts';

const DEGREE = Math.PI / 180;

const path = (outline: Outline): PathD =>
  flattened(outline, 5e-8).map(({ x, y }) => ({ x: x * 1e3, y: y * 1e3 }));
const area = (paths: readonly PathD[]): number => Math.abs(areaPathsD([...paths]));

const effective = (spec: ReturnType<typeof shippedSpec>, role: string): ((angle: number) => number) => {
  const port = spec.valve_gear.build(partContext(spec)).ports.find((own) => own.role === role);
  const { discharge_coefficient: cd } = spec.valve_gear.values as { discharge_coefficient: number };
  return (angle) => ((port?.effectiveArea(angle, 0) ?? NaN) / cd) * 1e6;
};

describe.each(['cask-hoist-slide-valve.yaml', 'launch-pump-double-acting.yaml'])(
  'the slide valve of %s',
  (name) => {
    const spec = shippedSpec(name);
    const files = drawn(spec);
    const valve = slideValveOf(spec.valve_gear.values as unknown as FlatSlideValve);
    const [block = [], hollow = []] = closedOn(fileOf(files, 'slide-valve.dxf'), 'OUTLINE');
    // The cylinder port of the cover end begins at the origin.
    const port = shapesOn(fileOf(files, 'port-face.dxf'), 'CUT-INSIDE').find(
      (own) => Math.abs(outlineBounds(own).left) < 1e-9,
    );

    it.each([
      [
        'admission',
        (shift: number) =>
          area(differenceD([path(port ?? [])], [path(moved(block, shift, 0))], FillRule.NonZero, 6)),
      ],
      [
        'exhaust',
        (shift: number) =>
          area(intersectD([path(port ?? [])], [path(moved(hollow, shift, 0))], FillRule.NonZero, 6)),
      ],
    ] as const)('%s', (role, opening) => {
      const displacement = displacementLaw(valve);
      const simulated = effective(spec, role);
      for (let degree = 0; degree < 360; degree += 13) {
        const angle = degree * DEGREE;
        // Towards opening the port to the chest is away from the cover end. 1e-4 mm²: files hold nanometres.
        expect(Math.abs(opening(-displacement(angle)) - simulated(angle)), `${degree}°`).toBeLessThan(1e-4);
      }
    });
  },
);

it('the far rim of a valve with one port stays on metal, whole, to the end of its travel', () => {
  const files = drawn(shippedSpec('cask-hoist-slide-valve.yaml'));
  const [block = [], hollow = []] = closedOn(fileOf(files, 'slide-valve.dxf'), 'OUTLINE');
  const exhaust = shapesOn(fileOf(files, 'port-face.dxf'), 'CUT-INSIDE').find(
    (own) => outlineBounds(own).right < 0,
  );
  // 9 mm of travel, a rim of 3 mm.
  const rim = outlineBounds(hollow).left - outlineBounds(block).left;
  expect(rim).toBeCloseTo(3e-3, 9);
  const atTheEnd = outlineBounds(hollow).left + 4.5e-3;
  expect(outlineBounds(exhaust ?? []).left).toBeCloseTo(atTheEnd, 9);
});

describe.each(['clockwise', 'anticlockwise'])('an oscillating cylinder whose crank turns %s', (turning) => {
  const spec = withGear(shippedSpec('fair-boat-oscillating.yaml'), { making: { turning } });
  const files = drawn(spec);
  const own = spec.valve_gear.values as unknown as OscillatingCylinder;
  const train = oscillatingTrain(partContext(spec));
  const [pin, admission = [], exhaust = []] = shapesOn(fileOf(files, 'standing-face.dxf'), 'DRILL');
  const [, port = []] = shapesOn(fileOf(files, 'cylinder-face.dxf'), 'DRILL');

  it.each([
    ['admission', admission],
    ['exhaust', exhaust],
  ] as const)('%s', (role, hole) => {
    expect(outlineBounds(pin ?? []).right * 2).toBeCloseTo(own.pivot_diameter, 9);
    const simulated = effective(spec, role);
    for (let degree = 0; degree < 360; degree += 13) {
      const angle = degree * DEGREE;
      // Crank below, cover and port above: as the pin goes to the right, the port swings to the left.
      const swung = (turning === 'clockwise' ? 1 : -1) * swing(train, angle);
      const opening = area(intersectD([path(turned(port, swung))], [path(hole)], FillRule.NonZero, 6));
      // Of 7 mm²; the table that the simulator reads, and chords for arcs.
      expect(Math.abs(opening - simulated(angle)), `${degree}°`).toBeLessThan(2e-3);
    }
  });
});
