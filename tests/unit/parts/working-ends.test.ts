/** Both ends of double-acting cylinders, and several cylinders on one shaft. */
import { describe, expect, it } from 'vitest';
import {
  angleAtStrokeFraction,
  pistonTravel,
  strokeFraction,
  type CrankTrain,
} from '../../../src/parts/crank-train.ts';
import {
  crankOffset,
  crankTrain,
  cylinderComplaints,
  cylinderEnds,
  endVolume,
  type Cylinder,
  type CylinderEnd,
} from '../../../src/parts/cylinder.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const single: Cylinder = { ...referenceSpec().cylinder, bore: 0.05, stroke: 0.06, clearance: 0.1 };
const double: Cylinder = {
  ...single,
  action: 'double',
  piston_rod_diameter: 0.01,
  crank_end_clearance: 0.15,
};

describe('a double-acting cylinder of 50 mm with a rod of 10 mm', () => {
  const [cover, crank] = cylinderEnds(double) as [CylinderEnd, CylinderEnd];

  it('works on 19.63 cm² at the cover and 18.85 cm² at the crank end', () => {
    expect(cover.area * 1e4).toBeCloseTo(19.635, 3);
    expect(crank.area * 1e4).toBeCloseTo(18.85, 3);
    expect(crank.area / cover.area).toBeCloseTo(1 - (10 / 50) ** 2, 12);
  });

  it('sweeps each area by the stroke, each with a clearance of its own', () => {
    expect(crank.sweptVolume).toBeCloseTo(crank.area * 0.06, 15);
    expect(crank.clearanceVolume).toBeCloseTo(0.15 * crank.sweptVolume, 15);
    const [, alike] = cylinderEnds({ ...double, crank_end_clearance: undefined });
    expect(alike!.clearanceVolume).toBeCloseTo(0.1 * alike!.sweptVolume, 15);
  });

  it('has its crank end half a turn behind, largest when the cover end is smallest', () => {
    expect([cover.deadCentre, crank.deadCentre]).toEqual([0, Math.PI]);
    expect(endVolume(crank, 0)).toBeCloseTo(crank.clearanceVolume + crank.sweptVolume, 15);
    expect(endVolume(crank, 0.06)).toBeCloseTo(crank.clearanceVolume, 15);
  });

  it('gives at one end what it takes at the other, but for the rod', () => {
    for (const travel of [0, 0.01, 0.033, 0.06]) {
      const both = endVolume(cover, travel) + endVolume(crank, travel);
      const rod = (cover.area - crank.area) * travel;
      expect(both - rod).toBeCloseTo(endVolume(cover, 0) + endVolume(crank, 0), 15);
    }
  });
});

describe('the stroke of the crank end', () => {
  const fromCover = crankTrain(double);
  const fromCrankEnd = crankTrain(double, 'crank');

  it.each([0, 0.05, 0.5, 0.8, 1])('%f of it is where the piston has gone so far from bottom', (fraction) => {
    const own = angleAtStrokeFraction(fromCrankEnd, fraction);
    const crankAngle = own + Math.PI;
    const travel = pistonTravel(fromCover, Math.sin(crankAngle), Math.cos(crankAngle));
    expect(travel).toBeCloseTo((1 - fraction) * 0.06, 12);
    expect(strokeFraction(fromCrankEnd, own)).toBeCloseTo(fraction, 12);
  });

  it('and back again is the same share', () => {
    for (const angle of [0.2, 1, 2, 3])
      expect(strokeFraction(fromCrankEnd, -angle)).toBeCloseTo(strokeFraction(fromCrankEnd, angle), 12);
  });

  it('is half done after more than a quarter turn, that of the cover end after less', () => {
    const half = (crank: CrankTrain): number => angleAtStrokeFraction(crank, 0.5);
    expect(half(fromCover)).toBeLessThan(Math.PI / 2);
    expect(half(fromCrankEnd)).toBeCloseTo(Math.PI - half(fromCover), 12);
  });
});

describe('several cylinders', () => {
  it.each([2, 3, 4, 6])('%i of them are spread evenly over the turn unless told otherwise', (cylinders) => {
    const own = { ...single, cylinders };
    const offsets = Array.from({ length: cylinders }, (_, i) => crankOffset(own, i));
    expect(offsets[0]).toBe(0);
    for (const [i, offset] of offsets.entries())
      expect(offset).toBeCloseTo((2 * Math.PI * i) / cylinders, 12);
    expect(cylinderEnds(own).map(({ deadCentre }) => deadCentre)).toEqual(offsets);
  });

  it('stand as far apart as said', () => {
    const own = { ...double, cylinders: 2, crank_spacing: Math.PI / 2 };
    const ends = cylinderEnds(own);
    expect(ends.map(({ cylinder, side }) => [cylinder, side])).toEqual([
      [0, 'cover'],
      [0, 'crank'],
      [1, 'cover'],
      [1, 'crank'],
    ]);
    expect(ends.map(({ deadCentre }) => deadCentre / Math.PI)).toEqual([0, 1, 0.5, 1.5]);
  });
});

describe('complaints', () => {
  it('a double-acting cylinder has none with a slender rod', () => {
    expect(cylinderComplaints(double)).toEqual([]);
  });

  it('without a rod it cannot be', () => {
    const [complaint] = cylinderComplaints({ ...double, piston_rod_diameter: undefined });
    expect(complaint).toMatchObject({ path: ['action'], received: 'double without one' });
  });

  it.each([
    [0.0449, 0],
    [0.0451, 1],
  ])('a rod of %f m in a bore of 50 mm: %i', (diameter, count) => {
    expect(cylinderComplaints({ ...double, piston_rod_diameter: diameter })).toHaveLength(count);
  });
});
