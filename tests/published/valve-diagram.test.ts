/** The valve diagram of a slide valve on one eccentric, against rules and worked values of others. */
import { describe, expect, it } from 'vitest';
import {
  angleOfAdvance,
  displacementLaw,
  slideValveEvents,
  type SlideValve,
} from '../../src/parts/valve-gears/slide-valve.ts';

const valve = (own: Partial<SlideValve>): SlideValve => ({
  eccentricity: 1,
  steamLap: 0.3,
  exhaustLap: 0,
  lead: 0,
  portWidth: 0.5,
  barWidth: 1,
  ...own,
});

/** Share of the stroke at a crank angle with an endless rod, which old rules reckon with. */
const strokeShare = (angle: number): number => (1 - Math.cos(angle)) / 2;

describe('worked values of a formula collection', () => {
  it('lap 10, lead 10, eccentricity 30 mm: advance 0.72972765622697 rad (seen)', () => {
    // waycalculator.com, "Angle of Advance of Eccentric".
    const advance = angleOfAdvance(valve({ eccentricity: 0.03, steamLap: 0.01, lead: 0.01 }));
    expect(advance).toBeCloseTo(0.72972765622697, 12);
  });

  it('eccentricity 0.1 m, advance 0.2, crank 0.5 rad: 0.064421768723769 m from the middle (seen)', () => {
    // Same collection, "Steam Lap at Admission and Cutoff": s = r sin(θ + α).
    const own = valve({ eccentricity: 0.1, steamLap: 0.1 * Math.sin(0.2) });
    expect(displacementLaw(own)(0.5)).toBeCloseTo(0.064421768723769, 14);
  });
});

describe('rules of Bourne, Catechism of the Steam Engine, questions 190 and 192', () => {
  // Lap = half travel × √(share of the stroke left at cut-off) − half the lead (seen). Exact without lead.
  it.each([0.5, 2 / 3, 0.75, 0.85, 0.9])('lap for cut-off at %s of the stroke, no lead', (cutOff) => {
    const steamLap = Math.sqrt(1 - cutOff);
    expect(strokeShare(slideValveEvents(valve({ steamLap })).cutOff)).toBeCloseTo(cutOff, 12);
  });

  it.each([0.5, 2 / 3, 0.75])(
    'with a lead of a twentieth of the eccentricity within 0.1 %% of the stroke: %s',
    (cutOff) => {
      const lead = 0.05;
      const steamLap = Math.sqrt(1 - cutOff) - lead / 2;
      const found = strokeShare(slideValveEvents(valve({ steamLap, lead })).cutOff);
      expect(Math.abs(found - cutOff)).toBeLessThan(1e-3);
    },
  );

  it.each([
    { steamLap: 0.4, lead: 0.05, exhaustLap: 0.1 },
    { steamLap: 0.6, lead: 0, exhaustLap: 0 },
    { steamLap: 0.3, lead: 0.1, exhaustLap: -0.1 },
  ])('way left at release: lap $steamLap, lead $lead, exhaust lap $exhaustLap', (own) => {
    // Arc whose sine is (lap + lead)/half travel, plus an arc of the exhaust lap, less 90°; way left = stroke/2 × (1 − cos).
    // The copy seen says "sine" for the second arc too; a valve with neither advance nor exhaust lap, which releases at the
    // dead centre, would then release at half stroke, so it is read as "cosine".
    const rest = Math.asin(own.steamLap + own.lead) + Math.acos(own.exhaustLap) - Math.PI / 2;
    const { release } = slideValveEvents(valve(own));
    expect(1 - strokeShare(release)).toBeCloseTo((1 - Math.cos(rest)) / 2, 12);
  });
});

describe('construction of Rose, Modern Machine-Shop Practice, figure 3312', () => {
  // Without lead the eccentric opens and shuts the port over the same arc as the crank covers from dead centre to cut-off,
  // half of it to open: so lap and port are what the chord leaves and cuts off of the eccentric's radius (seen).
  it.each([80, 100, 120])('cut-off at %s° of the crank', (degrees) => {
    const half = (degrees * Math.PI) / 360;
    const own = valve({ steamLap: Math.cos(half), portWidth: 1 - Math.cos(half) });
    const { admission, cutOff } = slideValveEvents(own);
    expect(admission).toBeCloseTo(0, 12);
    expect(cutOff).toBeCloseTo(2 * half, 12);
    expect(displacementLaw(own)(half)).toBeCloseTo(1, 12);
  });
});
