/** What air between faces pushes with, and what it costs the gears that it presses together or parts. */
import { describe, expect, it } from 'vitest';
import { flatSlideValve } from '../../../../src/parts/valve-gears/flat-slide-valve.ts';
import { meanFilmPressure, pushArea } from '../../../../src/parts/valve-gears/face-push.ts';
import { oscillatingCylinder } from '../../../../src/parts/valve-gears/oscillating-cylinder.ts';
import { pistonValve } from '../../../../src/parts/valve-gears/piston-valve.ts';
import { rotaryDisc } from '../../../../src/parts/valve-gears/rotary-disc.ts';
import type { GearPressures } from '../../../../src/parts/valve-gears/valve-gear.ts';
import { filled } from '../../../support/chosen.ts';
import { context, DEGREE, dragWork, noAir, sizeOf } from './bench.ts';

const mm = 1e-3;
const ROOM = 101_325;
const under = (chest: number, cylinder = ROOM, otherEnd = ROOM): GearPressures => ({
  chest,
  cylinder,
  otherEnd,
});

/** Mean of a function over 0 to 1, midpoint rule. */
const mean = (f: (share: number) => number, n = 20_000): number =>
  Array.from({ length: n }, (_, i) => f((i + 0.5) / n)).reduce((a, b) => a + b, 0) / n;

describe('a straight film', () => {
  it.each([
    [4e5, 1e5],
    [1.1e5, 1e5],
    [1e5, 6e5],
  ])('from %f to %f Pa has the mean of a square that falls evenly', (p1, p2) => {
    const evenly = mean((share) => Math.sqrt(p1 ** 2 + (p2 ** 2 - p1 ** 2) * share));
    expect(meanFilmPressure(p1, p2) / evenly).toBeCloseTo(1, 6);
  });
});

describe('a hole in a face', () => {
  it('pushes on the area under a pressure that falls with the logarithm of the radius', () => {
    const [a, b] = [3 * mm, 11 * mm];
    const ring = mean((share) => {
      const radius = a + (b - a) * share;
      return (Math.log(b / radius) / Math.log(b / a)) * 2 * Math.PI * radius * (b - a);
    });
    expect(pushArea(a, b) / (Math.PI * a ** 2 + ring)).toBeCloseTo(1, 6);
  });

  it('pushes with its own area alone when the face ends at its edge', () => {
    expect(pushArea(3 * mm, 3 * mm)).toBe(Math.PI * (3 * mm) ** 2);
    expect(pushArea(3 * mm, 3.0001 * mm) / pushArea(3 * mm, 3 * mm)).toBeCloseTo(1, 3);
  });
});

describe('a flat slide valve', () => {
  const own = filled(flatSlideValve.parameters, {
    travel: 10 * mm,
    steam_lap: 2.2 * mm,
    exhaust_lap: 0.5 * mm,
    lead: 0.3 * mm,
    port_width: 2 * mm,
    bar_width: 4 * mm,
    port_length: 12 * mm,
    cavity_length: 15 * mm,
    rim_width: 3 * mm,
    face_gap: 0,
    rubbing_force: 3,
    friction_coefficient: 0.1,
  });
  const gear = flatSlideValve.choose(own).build(context);
  /** Middle position at 150°, where the lever is the eccentricity and the port is covered. */
  const force = (pressures: GearPressures): number => gear.dragTorque(150 * DEGREE, 30, pressures) / (5 * mm);
  const hollow = 15 * 12;
  const port = 2 * 12;
  const lands = (2.2 + 0.5) * 12 + 3 * (2 * 15 + 12);

  it('drags with its rubbing force alone while there is no air', () => {
    expect(dragWork(gear, noAir)).toBeCloseTo(3 * 2 * 10 * mm, 6);
  });

  it('is pressed by the chest on hollow, port and half-borne lands', () => {
    const chest = 4e5;
    const pressed = (chest - ROOM) * (hollow + port) + (chest - meanFilmPressure(chest, ROOM)) * lands;
    expect(force(under(chest))).toBeCloseTo(3 + 0.1 * pressed * 1e-6, 9);
  });

  it('is eased by the cylinder under the covered port, not under an open one', () => {
    const [chest, cylinder] = [4e5, 3e5];
    expect(force(under(chest)) - force(under(chest, cylinder))).toBeCloseTo(
      0.1 * (cylinder - ROOM) * port * 1e-6,
      9,
    );
    // Wide open to the chest at the end of the travel, all but the port width.
    const atEnd = (pressures: GearPressures): number => gear.dragTorque(61 * DEGREE, 30, pressures);
    expect(atEnd(under(chest, cylinder))).toBeCloseTo(atEnd(under(chest)), 12);
  });

  it('is never sucked on: a cylinder that would lift it only takes the force away', () => {
    expect(force(under(ROOM, 60e5))).toBe(3);
  });

  it('of a double-acting engine has a second port that eases it', () => {
    const double = flatSlideValve.choose(own).build({ ...context, doubleActing: true });
    const drag = (pressures: GearPressures): number => double.dragTorque(150 * DEGREE, 30, pressures);
    expect(drag(under(4e5, ROOM, 3e5))).toBeCloseTo(drag(under(4e5, 3e5, ROOM)), 12);
    expect(drag(under(4e5, ROOM, 3e5))).toBeLessThan(drag(under(4e5)));
  });
});

describe('a piston valve', () => {
  const gear = pistonValve
    .choose(
      filled(pistonValve.parameters, {
        travel: 10 * mm,
        steam_lap: 2 * mm,
        port_width: 2 * mm,
        bar_width: 5 * mm,
        sleeve_bore: 14 * mm,
        clearance: { by: 'gap', gap: 0 },
        rubbing_force: 4,
        rubbing_force_per_pressure: 1e-5,
      }),
    )
    .build(context);

  it('is balanced but for what grows with the pressure in the chest', () => {
    expect(dragWork(gear, noAir)).toBeCloseTo(4 * 20 * mm, 6);
    expect(dragWork(gear, under(ROOM + 3e5))).toBeCloseTo(7 * 20 * mm, 6);
    expect(dragWork(gear, under(ROOM + 3e5, 3e5))).toBeCloseTo(7 * 20 * mm, 6);
  });
});

describe('a rotary disc', () => {
  const track = (pitch: number, hole: number, opens: number, closes: number) => ({
    pitch_radius: pitch,
    hole_diameter: hole,
    slot_width: hole,
    opens: { by: 'angle', angle: opens * DEGREE },
    closes: { by: 'angle', angle: closes * DEGREE },
  });
  const gearWith = (slots: number) =>
    rotaryDisc
      .choose(
        filled(rotaryDisc.parameters, {
          disc_diameter: 100 * mm,
          shaft_diameter: 12 * mm,
          slots,
          face_gap: 20e-6,
          preload_torque: 0.1,
          friction_coefficient: 0.12,
          admission: track(38 * mm, 6 * mm, -5, 100),
          exhaust: track(24 * mm, 8 * mm, 165, 325),
        }),
      )
      .build(context);
  const admission = 38 * mm * pushArea(3 * mm, 12 * mm);
  const exhaust = 24 * mm * pushArea(4 * mm, 18 * mm);
  const drag = (slots: number, pressures: GearPressures): number =>
    gearWith(slots).dragTorque(1, 0, pressures) - 0.1;

  it('rubs on the back plate that the chest pushes it to', () => {
    expect(drag(1, noAir)).toBeCloseTo(0, 12);
    expect(drag(1, under(ROOM + 3e5))).toBeCloseTo(0.12 * 3e5 * admission, 9);
    expect(drag(2, under(ROOM + 3e5))).toBeCloseTo((0.12 * 3e5 * admission) / 2, 9);
  });

  it('rubs on the front plate that the cylinder pushes it to, by both holes', () => {
    expect(drag(1, under(ROOM, ROOM + 3e5))).toBeCloseTo(0.12 * 3e5 * (admission + exhaust), 9);
    expect(drag(1, under(ROOM + 3e5, ROOM + 3e5))).toBeCloseTo(0.12 * 3e5 * exhaust, 9);
  });
});

describe('an oscillating cylinder', () => {
  const gear = oscillatingCylinder
    .choose(
      filled(oscillatingCylinder.parameters, {
        port_diameter: 6 * mm,
        hole_circle_radius: 30 * mm,
        face_diameter: 90 * mm,
        pivot_diameter: 8 * mm,
        face_gap: 0,
        face_force: 100,
        admission: { hole_diameter: 6 * mm, angle: 13 * DEGREE },
        exhaust: { hole_diameter: 6 * mm, angle: 13 * DEGREE },
      }),
    )
    .build(context);
  const share = (pressures: GearPressures): number => dragWork(gear, pressures) / dragWork(gear, noAir);
  const area = pushArea(3 * mm, 15 * mm);

  it('rubs with what spring and air leave', () => {
    expect(share(under(ROOM + 1e5))).toBeCloseTo(1 - (1e5 * area) / 100, 9);
    expect(share(under(ROOM + 1e5, ROOM + 1e5))).toBeCloseTo(1 - (2e5 * area) / 100, 9);
  });

  it('no longer rubs when the air parts the faces, which a size foretells', () => {
    const parting =
      100 / sizeOf(gear, 'spring force against which chest and cylinder together part the faces');
    expect(share(under(ROOM + 0.999 * parting, ROOM + 0.999 * parting))).toBeGreaterThan(0);
    expect(share(under(ROOM + 1.001 * parting, ROOM + 1.001 * parting))).toBe(0);
  });
});
