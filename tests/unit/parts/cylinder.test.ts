/** Sizes of the cylinder. */
import { describe, expect, it } from 'vitest';
import {
  crankTrain,
  cylinderComplaints,
  cylinderEnds,
  endVolume,
  wallArea,
  type CylinderEnd,
} from '../../../src/parts/cylinder.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const own = { ...referenceSpec().cylinder, bore: 0.05, stroke: 0.06, clearance: 0.1 };
const [end] = cylinderEnds(own) as [CylinderEnd];

describe('a cylinder of 50 mm by 60 mm', () => {
  it('has a piston of 19.6 cm² and sweeps 118 cm³', () => {
    expect(end.area * 1e4).toBeCloseTo(19.635, 3);
    expect(end.sweptVolume * 1e6).toBeCloseTo(117.81, 2);
  });

  it('keeps its share of that at top dead centre', () => {
    expect(end.clearanceVolume).toBeCloseTo(0.1 * end.sweptVolume, 15);
    expect(endVolume(end, 0)).toBe(end.clearanceVolume);
  });

  it('has a crank of half its stroke', () => {
    expect(crankTrain(own)).toEqual({ crankRadius: 0.03, rodLength: own.rod_length, fromCrankEnd: false });
  });

  it('shows both ends and the uncovered barrel to the gas', () => {
    const covers = 2 * end.area;
    const barrel = (height: number): number => Math.PI * 0.05 * height;
    const wallAt = (travel: number): number => wallArea(end, 0.05, endVolume(end, travel));
    expect(wallAt(0)).toBeCloseTo(covers + barrel(0.006), 12);
    expect(wallAt(0.06)).toBeCloseTo(covers + barrel(0.066), 12);
  });
});

describe('a rod', () => {
  it('of six tenths of the stroke will do', () => {
    expect(cylinderComplaints({ ...own, rod_length: 0.036 })).toEqual([]);
  });

  it('that is shorter will not', () => {
    const [complaint] = cylinderComplaints({ ...own, rod_length: 0.035 });
    expect(complaint).toMatchObject({ path: ['rod_length'], received: '35.0 mm' });
    expect(complaint!.expected).toContain('36.0 mm');
  });
});
