/** Cam-driven spools: the ports open and shut where the cams were made for it, and are widest under the dwell. */
import { describe, expect, it } from 'vitest';
import { mouthArea, spoolArea, type Spool } from '../../../../src/parts/valve-gears/spool.ts';
import { spoolGear } from '../../../support/reference-engine.ts';
import { areaOf, context, DEGREE, eventDeviation, leakFlow, noAir, observedEvents, sizeOf } from './bench.ts';

const gear = spoolGear().build(context);

/** The admission spool of that gear, as it stands there. */
const admission: Spool = {
  boreDiameter: 12e-3,
  waistDiameter: 6e-3,
  waistLength: 7e-3,
  holeDiameter: 6e-3,
  radialClearance: 6e-6,
  eccentricity: 1,
  lap: 1e-3,
  endLand: 10e-3,
};

describe('spools under their cams', () => {
  it('open and shut where the scenario says', () => {
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-4);
    expect(gear.events.admission / DEGREE).toBeCloseTo(355, 9);
    expect(gear.events.release / DEGREE).toBeCloseTo(165, 9);
  });

  it('stand open by their whole lift, less the lash, under the dwell', () => {
    const begins = sizeOf(gear, 'admission cam, crank angle where the rise begins');
    const middle =
      begins + sizeOf(gear, 'admission cam, from the begin of the rise to the end of the fall') / 2;
    // 7.2 mm of cam and 0.2 mm of lash: the edge is just past the hole.
    expect(mouthArea(admission, 7e-3) / (Math.PI * 3e-3 ** 2)).toBeCloseTo(1, 9);
    expect(areaOf(gear, 'admission')(middle) / spoolArea(admission, 0.65, 7e-3)).toBeCloseTo(1, 5);
  });

  it('open as much before as after the dwell, the flanks being alike', () => {
    const { admission: opens, cutOff } = gear.events;
    const area = areaOf(gear, 'admission');
    for (const passed of [2, 5, 10, 15]) {
      const opening = area(opens + passed * DEGREE);
      expect(opening).toBeGreaterThan(0);
      expect(area(cutOff - passed * DEGREE) / opening).toBeCloseTo(1, 4);
    }
  });

  it('leak less past the shut land the further the cam is away', () => {
    const past = (degrees: number): number =>
      leakFlow(gear, 'past the shut admission spool', degrees * DEGREE);
    expect(past(200)).toBeGreaterThan(0);
    expect(past(354)).toBeGreaterThan(1.5 * past(200));
  });

  it('cost the same to drive all the way round', () => {
    for (const angle of [0, 1, 4]) expect(gear.dragTorque(angle, 30, noAir)).toBe(0.06);
  });
});
