/** Electric valves: commands at rest, late by the clock with speed, half open and then not at all as it grows. */
import { describe, expect, it } from 'vitest';
import { conductanceFlow } from '../../../../src/gas/conductance.ts';
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import {
  anyOpeningLimit,
  fullOpeningLimit,
  openingAt,
  shuttingLimit,
  type SwitchedValve,
} from '../../../../src/parts/valve-gears/electric-valve-motion.ts';
import { electricValves } from '../../../../src/parts/valve-gears/electric-valves.ts';
import { filled } from '../../../support/chosen.ts';
import { context, DEGREE, sizeOf } from './bench.ts';

const RPM = (2 * Math.PI) / 60;

/** At 1000 rpm a millisecond is 6°. */
const valve: SwitchedValve = {
  opens: 10 * DEGREE,
  closes: 100 * DEGREE,
  openingDelay: 5e-3,
  closingDelay: 3e-3,
  travelTime: 2e-3,
};

const opening = (degrees: number, rpm: number, own = valve): number =>
  openingAt(own, degrees * DEGREE, rpm * RPM);

/** Where the opening is above zero, and its peak, by looking. */
function observed(own: SwitchedValve, rpm: number) {
  const n = 36_000;
  const all = Array.from({ length: n }, (_, i) => opening((360 * (i + 0.5)) / n, rpm, own));
  return { open: (360 * all.filter((value) => value > 0).length) / n, peak: Math.max(...all) };
}

describe('an electric valve', () => {
  it('stands as commanded with the crank at rest', () => {
    for (const [degrees, expected] of [
      [9.99, 0],
      [10.2, 1],
      [50, 1],
      [99.9, 1],
      [100.2, 0],
      [200, 0],
    ] as const)
      expect(opening(degrees, 0), String(degrees)).toBe(expected);
  });

  it('is late by its delays at speed', () => {
    // Begins at 10 + 30°, full 12° later; begins to shut at 100 + 18°.
    for (const [degrees, expected] of [
      [39, 0],
      [46, 0.5],
      [52.1, 1],
      [117.9, 1],
      [124, 0.5],
      [131, 0],
    ] as const)
      expect(opening(degrees, 1000), String(degrees)).toBeCloseTo(expected, 9);
  });

  it('turns back half open once its travel is longer than its time', () => {
    const limit = fullOpeningLimit(valve)!;
    // 90° commanded; 4 ms lost to travel and delays together.
    expect(limit).toBeCloseTo((90 * DEGREE) / 4e-3, 9);
    expect(observed(valve, limit / RPM).peak).toBeCloseTo(1, 3);
    const faster = observed(valve, (1.25 * limit) / RPM);
    const travel = (1.25 * limit * valve.travelTime) / DEGREE;
    const moving = 90 - (1.25 * limit * 2e-3) / DEGREE;
    expect(faster.peak).toBeCloseTo(moving / travel, 3);
    expect(faster.open).toBeCloseTo(2 * moving, 1);
  });

  it('never stirs above the speed at which its command is over too soon, and fades out before', () => {
    const limit = anyOpeningLimit(valve)!;
    const peaks = [0.9, 0.97, 0.99, 0.999].map((share) => observed(valve, (share * limit) / RPM).peak);
    for (const [i, peak] of peaks.slice(1).entries()) expect(peak).toBeLessThan(peaks[i]!);
    expect(peaks.at(-1)).toBeLessThan(0.01);
    expect(observed(valve, (1.01 * limit) / RPM).peak).toBe(0);
    expect(anyOpeningLimit({ ...valve, closingDelay: 5e-3 })).toBeUndefined();
  });

  it('stays open when it shuts too slowly for the next command', () => {
    const slow = { ...valve, closingDelay: 30e-3 };
    const limit = shuttingLimit(slow)!;
    expect(observed(slow, (0.99 * limit) / RPM).open).toBeLessThan(359);
    expect(observed(slow, (1.01 * limit) / RPM).open).toBe(360);
    expect(observed(slow, (3 * limit) / RPM).open).toBe(360);
  });

  it('is never more than open, and changes evenly over the turn and with the speed', () => {
    for (const own of [valve, { ...valve, closingDelay: 30e-3 }, { ...valve, openingDelay: 40e-3 }])
      for (let rpm = 5; rpm < 20_000; rpm *= 1.3)
        for (let degrees = 0; degrees < 720; degrees += 7) {
          const here = opening(degrees, rpm, own);
          expect(here).toBeGreaterThanOrEqual(0);
          expect(here).toBeLessThanOrEqual(1);
          expect(Math.abs(opening(degrees + 1e-6, rpm, own) - here)).toBeLessThan(1e-4);
          expect(Math.abs(opening(degrees, rpm * (1 + 1e-9), own) - here)).toBeLessThan(1e-4);
        }
  });
});

const at = (degrees: number) => ({ by: 'angle', angle: degrees * DEGREE });
const own = (opens: number, closes: number) => ({
  sonic_conductance: 5e-8,
  opens: at(opens),
  closes: at(closes),
  opening_delay: 5e-3,
  closing_delay: 3e-3,
  travel_time: 2e-3,
});
const chosen = (admission = own(10, 100)) =>
  electricValves.choose(filled(electricValves.parameters, { admission, exhaust: own(170, 330) }));

describe('a pair of them', () => {
  const gear = chosen().build(context);
  const [admission] = gear.ports;

  it('passes what the data sheet says, times the opening', () => {
    const full = conductanceFlow(
      dryAir,
      { sonicConductance: 5e-8, criticalPressureRatio: 0.3 },
      5e5,
      290,
      2e5,
    );
    const flow = (degrees: number) => admission!.massFlow(degrees * DEGREE, 5e5, 290, 2e5, 290, 1000 * RPM);
    expect(flow(80)).toBeCloseTo(full, 15);
    expect(flow(46)).toBeCloseTo(full / 2, 12);
    expect(flow(20)).toBe(0);
  });

  it('has the area that chokes with the same flow', () => {
    const area = admission!.effectiveArea(80 * DEGREE, 1000 * RPM);
    const choked = admission!.massFlow(80 * DEGREE, 5e5, 290, 1e5, 290, 1000 * RPM);
    expect((area * 5e5 * dryAir.chokedFlowFactor) / Math.sqrt(290)).toBeCloseTo(choked, 8);
    expect(sizeOf(gear, 'admission valve, effective area fully open')).toBeCloseTo(area, 15);
  });

  it('says above which speeds it lags too far', () => {
    const size = (words: string): number => sizeOf(gear, `admission valve, speed above which it ${words}`);
    expect(size('no longer opens fully') / RPM).toBeCloseTo(3750, 6);
    expect(size('no longer opens at all') / RPM).toBeCloseTo(7500, 6);
  });

  it('cannot be switched on for no time', () => {
    const paths = (choice: ReturnType<typeof chosen>) =>
      choice.complaints(context).map(({ path }) => path.join('.'));
    expect(paths(chosen())).toEqual([]);
    expect(paths(chosen(own(10, 10)))).toEqual(['admission.closes']);
    expect(paths(chosen(own(10, 9.5)))).toEqual(['admission.closes']);
  });
});
