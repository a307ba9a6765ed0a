/** The table of settled answers, asked of an engine whose answers are a law. */
import { describe, expect, it } from 'vitest';
import { specAt, supplyCurve, type SupplyCurve } from '../../../src/run/supply/supply-curve.ts';
import { answersOf, inFront, plainLaw } from '../../support/engine-by-law.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const spec = referenceSpec({ supply: { pressure: 4e5 } });
const { answer, asked } = answersOf(plainLaw);
const curve = supplyCurve(spec, 4e5, answer) as SupplyCurve;

describe('the settled engine over the pressure in the receiver', () => {
  it('is asked for a dozen answers, each from somewhat more than the speed of the one before', () => {
    expect(asked.length).toBeGreaterThan(6);
    expect(asked.length).toBeLessThanOrEqual(16);
    expect(asked[0]).toMatchObject({ start: spec.start });
    const first = asked[1]!;
    expectWithin(first.start.hand_speed, 1.5 * plainLaw.speed(4e5), 1e-12);
  });

  it('finds the pressure at which it stops', () => {
    expect(curve.stallPressure).toBeGreaterThanOrEqual(plainLaw.stall);
    expectWithin(curve.stallPressure, plainLaw.stall, 0.006);
  });

  it('is within half a per cent of the law between the answers', () => {
    for (let p = 2.22e5; p <= 4e5; p += 1e3) {
      expectWithin(curve.speed(p), plainLaw.speed(p), 5e-3);
      expectWithin(curve.demand(p), plainLaw.airMassFlow(p), 5e-3);
    }
  });

  it('is level above the highest pressure, where the regulator holds it', () => {
    expect(curve.demand(9e5)).toBe(curve.demand(4e5));
  });

  it('is exact where it has been refined, and asks for nothing that it knows or cannot know', () => {
    const finer = curve.refinedAt(3.33e5);
    expect(finer.points.length).toBe(curve.points.length + 1);
    expect(finer.speed(3.33e5)).toBe(plainLaw.speed(3.33e5));
    const before = asked.length;
    expect(finer.refinedAt(3.33e5).points).toEqual(finer.points);
    expect(finer.refinedAt(9e5).points).toEqual(finer.points);
    expect(finer.refinedAt(1.5e5).points).toEqual(finer.points);
    expect(asked.length).toBe(before);
  });

  it('of an engine that does not even run at first is how that one ended', () => {
    expect(supplyCurve(spec, 2e5, answersOf(plainLaw).answer)).toMatchObject({ kind: 'stalled' });
  });

  it('of an engine that runs at the highest pressure only is that one answer', () => {
    const barely = supplyCurve(
      spec,
      4e5,
      answersOf({ ...plainLaw, stall: 3.999_99e5 }).answer,
    ) as SupplyCurve;
    expect(barely.points.map(({ pressure }) => pressure)).toEqual([4e5]);
    expect(barely.stallPressure).toBe(4e5);
    expect(barely.speed(4e5)).toBe(plainLaw.speed(4e5));
  });

  it('of an engine that runs on next to nothing ends there', () => {
    const tireless = supplyCurve(spec, 4e5, answersOf({ ...plainLaw, stall: 0, speed: () => 9 }).answer);
    expect((tireless as SupplyCurve).stallPressure - spec.atmosphere.pressure).toBeLessThan(0.2e5);
  });
});

describe('the description with so much in the receiver', () => {
  it('has the set pressure as long as there is more', () => {
    expect(specAt(spec, 7e5).supply.pressure).toBe(4e5);
    expect(specAt(spec, 3e5).supply.pressure).toBe(3e5);
  });

  it('keeps the setting of a regulator that is described, and changes what is in front of it', () => {
    const regulator = {
      inlet_pressure: 8e5,
      sonic_conductance: 3e-8,
      critical_pressure_ratio: 0.3,
      droop: 4e4,
    };
    const drooping = referenceSpec({ supply: { pressure: 4e5, regulator } });
    const there = specAt(drooping, 3e5);
    expect(there.supply.pressure).toBe(4e5);
    expect(inFront(there)).toBe(3e5);
  });
});
