/** Windows by crank angle: openings at known places, leaks, sizes, what cannot be. */
import { describe, expect, it } from 'vitest';
import { gapFlow, slitResistance } from '../../../../src/gas/gap.ts';
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import { windows } from '../../../../src/parts/valve-gears/windows.ts';
import { filled } from '../../../support/chosen.ts';
import { areaOf, context, DEGREE, eventDeviation, leakFlow, noAir, observedEvents, sizeOf } from './bench.ts';

const at = (degrees: number) => ({ by: 'angle', angle: degrees * DEGREE }) as const;
const leak = { width: 20e-3, height: 10e-6, length: 2e-3 };

const admission = { hole_diameter: 5e-3, opens: at(-10), closes: at(90), ramp: 20 * DEGREE };
const exhaust = { area: 30e-6, opens: at(170), closes: at(330), discharge_coefficient: 0.8, leak };

const chosen = (values: Readonly<Record<string, unknown>> = {}) =>
  windows.choose(filled(windows.parameters, { admission, exhaust, ...values }));
const gear = chosen().build(context);

describe('windows', () => {
  it('open along straight ramps', () => {
    const full = 0.7 * (Math.PI / 4) * 25e-6;
    const area = areaOf(gear, 'admission');
    for (const [degrees, share] of [
      [-10, 0],
      [-5, 0.25],
      [0, 0.5],
      [10, 1],
      [50, 1],
      [80, 0.5],
      [85, 0.25],
      [90, 0],
      [200, 0],
      [355, 0.25],
    ] as const)
      expect(area(degrees * DEGREE), String(degrees)).toBeCloseTo(share * full, 15);
    expect(areaOf(gear, 'exhaust')(250 * DEGREE)).toBeCloseTo(0.8 * 30e-6, 15);
  });

  it('have their events where the areas show them', () => {
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-9);
    expect(gear.events.admission).toBeCloseTo(350 * DEGREE, 12);
  });

  it('leak as the slit given, and not at all without one', () => {
    const expected = gapFlow(dryAir, slitResistance(2e-3, 20e-3, 10e-6), 20e-3 * 10e-6, 4e5, 288.15, 1e5);
    expect(leakFlow(gear, 'past the shut exhaust port', 0)).toBeCloseTo(expected, 15);
    expect(gear.sealingGaps).toHaveLength(1);
  });

  it('say the size that was not given', () => {
    expect(sizeOf(gear, 'admission, area fully open')).toBeCloseTo((Math.PI / 4) * 25e-6, 15);
    expect(sizeOf(gear, 'exhaust, diameter of a round hole of that area')).toBeCloseTo(6.18e-3, 5);
    expect(sizeOf(gear, 'admission, open for')).toBeCloseTo(100 * DEGREE, 12);
  });

  it('cost the torque given', () => {
    expect(gear.dragTorque(1, 30, noAir)).toBe(0);
    expect(chosen({ drive_torque: 0.2 }).build(context).dragTorque(1, 30, noAir)).toBe(0.2);
  });

  it.each([
    ['no size', { ...admission, hole_diameter: undefined }, 'admission.area'],
    ['two sizes', { ...admission, area: 1e-5 }, 'admission.hole_diameter'],
    ['no time open', { ...admission, closes: at(-9) }, 'admission.closes'],
    ['too long a ramp', { ...admission, ramp: 51 * DEGREE }, 'admission.ramp'],
  ])('with %s cannot be', (_fault, own, path) => {
    const complaints = chosen({ admission: own }).complaints(context);
    expect(complaints.map((complaint) => complaint.path.join('.'))).toEqual([path]);
    expect(chosen().complaints(context)).toEqual([]);
  });
});
