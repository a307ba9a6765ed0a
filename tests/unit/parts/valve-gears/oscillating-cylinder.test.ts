/** Oscillating cylinder: openings at known swings, events, leaks, and what rubbing faces cost. */
import { describe, expect, it } from 'vitest';
import { filmResistance, gapFlow } from '../../../../src/gas/gap.ts';
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import { sharedCircleArea } from '../../../../src/parts/geometry/circles.ts';
import { faceFilm } from '../../../../src/parts/valve-gears/face-film.ts';
import { oscillatingCylinder } from '../../../../src/parts/valve-gears/oscillating-cylinder.ts';
import {
  areaOf,
  context,
  DEGREE,
  dragWork,
  eventDeviation,
  leakFlow,
  noAir,
  observedEvents,
  sizeOf,
} from './bench.ts';

const mm = 1e-3;
const micron = 1e-6;

/** Crank 30, trunnion at 120 mm: swings asin(1/4) either way, at the crank angle acos(1/4). */
const REACH = Math.asin(0.25);
const SQUARE = Math.acos(0.25);

const own = {
  port_diameter: 6 * mm,
  hole_circle_radius: 30 * mm,
  face_diameter: 90 * mm,
  pivot_diameter: 8 * mm,
  face_gap: 5 * micron,
  discharge_coefficient: 0.7,
  face_force: 50,
  friction_coefficient: 0.15,
  reversing_tap: 'none',
  admission: { hole_diameter: 6 * mm, angle: REACH },
  exhaust: { hole_diameter: 6 * mm, angle: REACH },
};

const gearWith = (values: Partial<typeof own> = {}) =>
  oscillatingCylinder.choose({ ...own, ...values }).build(context);

describe('openings', () => {
  it('with the holes at the greatest swing are full there', () => {
    const gear = gearWith();
    const full = 0.7 * Math.PI * (3 * mm) ** 2;
    expect(areaOf(gear, 'admission')(SQUARE) / full).toBeCloseTo(1, 6);
    expect(areaOf(gear, 'exhaust')(-SQUARE) / full).toBeCloseTo(1, 6);
    expect(areaOf(gear, 'admission')(-SQUARE)).toBe(0);
    expect(areaOf(gear, 'exhaust')(SQUARE)).toBe(0);
  });

  it.each([
    { name: 'a hole at the greatest swing', hole: 6, at: REACH },
    { name: 'a smaller hole, which the port covers for a while', hole: 5, at: 0.2 },
    { name: 'an equal hole, which the port passes over', hole: 6, at: 0.2 },
  ])('of $name are what port and hole share, at every angle', ({ hole, at }) => {
    const area = areaOf(gearWith({ admission: { hole_diameter: hole * mm, angle: at } }), 'admission');
    for (let degrees = 3.3; degrees < 180; degrees += 2.9) {
      const angle = degrees * DEGREE;
      const swing = Math.atan2(30 * Math.sin(angle), 120 - 30 * Math.cos(angle));
      const apart = 2 * 30 * mm * Math.sin(Math.abs(swing - at) / 2);
      const shared = 0.7 * sharedCircleArea(3 * mm, (hole / 2) * mm, apart);
      // Two millionths of the hole, which the table loses at the foot of the opening.
      expect(area(angle) / 1e-6).toBeCloseTo(shared / 1e-6, 4);
    }
  });

  it('alike on both sides, mirrored in time', () => {
    const gear = gearWith();
    for (let degrees = 5; degrees < 180; degrees += 10)
      expect(areaOf(gear, 'exhaust')(-degrees * DEGREE) / 1e-6).toBeCloseTo(
        areaOf(gear, 'admission')(degrees * DEGREE) / 1e-6,
        9,
      );
  });
});

describe('events', () => {
  it.each([
    { name: 'holes at the greatest swing', values: {} },
    { name: 'unequal holes', values: { exhaust: { hole_diameter: 7 * mm, angle: 0.24 } } },
    {
      name: 'swinging past the middle of the hole',
      values: { admission: { hole_diameter: 5 * mm, angle: 0.2 } },
    },
    {
      name: 'touching at dead centre',
      values: { admission: { hole_diameter: 6 * mm, angle: 2 * Math.asin(0.1) } },
    },
    { name: 'open beyond the dead centres', values: { admission: { hole_diameter: 8 * mm, angle: 0.2 } } },
  ])('$name: as computed and as seen on the areas', ({ values }) => {
    const gear = gearWith(values);
    // A round edge opens as δ^1.5; a tabulated area shows it a hundredth of a degree late.
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(2e-4);
  });

  it('of holes that touch at dead centre are the dead centres', () => {
    const { events } = gearWith({ admission: { hole_diameter: 6 * mm, angle: 2 * Math.asin(0.1) } });
    expect(events.admission).toBeCloseTo(0, 12);
    expect(events.cutOff).toBeCloseTo(Math.PI, 12);
  });
});

describe('leaks', () => {
  it('from chest to cylinder shrink as the port swings away', () => {
    const gear = gearWith();
    const name = 'across the faces, from chest to cylinder';
    const flows = [0, -10, -30, -60].map((degrees) => leakFlow(gear, name, degrees * DEGREE));
    for (let i = 1; i < flows.length; i += 1) expect(flows[i]).toBeLessThan(flows[i - 1]!);
  });

  it('are those of the film that all three share', () => {
    const gear = gearWith();
    const aside = 2 * 30 * mm * Math.sin(REACH / 2);
    const film = faceFilm(
      { holeCircle: 30 * mm, rim: 45 * mm, pivot: 4 * mm },
      { chest: 3 * mm, cylinder: 3 * mm, room: 3 * mm, chestToRoom: 2 * 30 * mm * Math.sin(REACH) },
    );
    const factors = film({ chestToCylinder: aside, cylinderToRoom: aside });
    const h = 5 * micron;
    const flow = (shapeFactor: number): number =>
      gapFlow(dryAir, filmResistance(shapeFactor, h), Math.PI * 6 * mm * h, 4e5, 288.15, 1e5);
    const found = (ends: string): number => leakFlow(gear, `across the faces, from ${ends}`, 0);
    expect(found('chest to cylinder') / flow(factors.chestToCylinder)).toBeCloseTo(1, 5);
    expect(found('cylinder to room') / flow(factors.cylinderToRoom)).toBeCloseTo(1, 5);
    expect(found('chest to room') / flow(factors.chestToRoom)).toBeCloseTo(1, 5);
  });

  it('are none with a perfect fit', () => {
    expect(gearWith({ face_gap: 0 }).sealingGaps).toEqual([]);
  });
});

describe('rubbing faces', () => {
  it('take friction at the mean radius over four times the greatest swing in a turn', () => {
    const gear = gearWith();
    const meanRadius = ((2 / 3) * (45 ** 3 - 4 ** 3)) / (45 ** 2 - 4 ** 2);
    expect(dragWork(gear, noAir)).toBeCloseTo(0.15 * 50 * meanRadius * mm * 4 * REACH, 6);
  });

  it.each([SQUARE, 2 * Math.PI - SQUARE])('rest where the cylinder turns back, an edge: %s rad', (angle) => {
    const gear = gearWith();
    expect(gear.dragTorque(angle, 30, noAir)).toBeCloseTo(0, 12);
    expect(gear.edges.some((edge) => Math.abs(edge - angle) < 1e-9)).toBe(true);
  });
});

describe('derived sizes', () => {
  it('place the holes and say how far the port is shut at dead centre', () => {
    const gear = gearWith();
    expect(sizeOf(gear, 'greatest swing either way')).toBeCloseTo(REACH, 12);
    expect(sizeOf(gear, 'admission hole, aside from the middle line') / mm).toBeCloseTo(7.5, 12);
    expect(sizeOf(gear, 'lap of the exhaust hole at dead centre') / mm).toBeCloseTo(
      60 * Math.sin(REACH / 2) - 6,
      12,
    );
  });
});
