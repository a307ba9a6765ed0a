/** What a pressure decay says, and when it says nothing. */
import { describe, expect, it } from 'vitest';
import { annulusResistance } from '../../../src/gas/gap.ts';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { pressureThroughOrifice } from '../../../src/gas/orifice-decay.ts';
import { pressureThroughGap } from '../../../src/gas/pressure-decay.ts';
import { noise, stepped } from '../../support/noise.ts';
import { csv, findingOf, type Changes } from './sheets.ts';

const ROOM = 101_300;
const TEMPERATURE = 285.15;
const VOLUME = 95e-6;

/** Two annuli of 12 mm bore and 12 mm land, radial clearance 9 µm, as the shipped readings were made. */
const GAP = 9e-6;
const resistance = annulusResistance(12e-3, GAP, 12e-3, 0) / 2;
const timeConstant = (12 * dryAir.viscosity(TEMPERATURE) * resistance * VOLUME) / ROOM;

function fall(law: (t: number) => number, end = 130, step = 2000): NonNullable<Changes['files']> {
  const own = noise(4);
  const rows = Array.from({ length: 27 }, (_, i) => {
    const t = (i * end) / 26;
    return [t, stepped(law(t) - ROOM + 300 * own.normal(), step) / 1e5] as const;
  });
  return { 'chest-decay.csv': csv('time_s,pressure_bar_gauge', rows) };
}

const throughGap = (t: number): number => pressureThroughGap(ROOM + 3e5, ROOM, timeConstant, t);

describe('the shipped chest', () => {
  const found = findingOf('chest-decay.yaml');

  it('has the clearance that its readings were made with, within the interval', () => {
    const gap = found.estimates[2]!;
    expect(found.headline).toContain('narrow gap (laminar)');
    expect(gap.low).toBeLessThan(GAP);
    expect(gap.high).toBeGreaterThan(GAP);
    expect(gap.high / gap.low).toBeLessThan(1.1);
    expect(found.warnings).toEqual([]);
  });

  it('hands over a leak that fits into a scenario', () => {
    expect(found.scenario).toMatch(/kind: pressure decay\n {4}between: chest to room\n {4}volume: 95 cm3/);
  });
});

it('knows a hole by its curve, and its diameter', () => {
  const area = 0.65 * (Math.PI / 4) * 0.2e-3 ** 2;
  const hole = { gas: dryAir, areaPerVolume: area / VOLUME, temperature: TEMPERATURE, against: ROOM };
  const found = findingOf('chest-decay.yaml', {
    files: fall((t) => pressureThroughOrifice(hole, ROOM + 3e5, t), 25),
  });
  const diameter = found.estimates[1]!;
  expect(found.headline).toContain('hole (orifice-like)');
  expect(diameter.low).toBeLessThan(0.2e-3);
  expect(diameter.high).toBeGreaterThan(0.2e-3);
  expect(found.scenario).toContain('kind: hole');
});

it('does not tell gap from hole in so short a fall, and widens the range by that', () => {
  const found = findingOf('chest-decay.yaml', {
    files: fall(throughGap, 1.5),
    replace: [['reference_pressure: 3 bar gauge', 'reference_pressure: 1 bar gauge']],
  });
  expect(found.headline).toContain('does not tell');
  expect(found.warnings.join()).toContain('outside of what was read; which law holds is not known');
  const leak = found.estimates[0]!;
  expect(leak.high / leak.low).toBeGreaterThan(1.4);
});

describe('air that still cools', () => {
  const warm = (t: number): number => throughGap(t) * (1 + 0.06 * Math.exp(-t / 5));

  it('is noticed, taken out, and told how long to wait for', () => {
    const found = findingOf('chest-decay.yaml', {
      files: fall(warm),
      replace: [['waited: 60 s', 'waited: 1 s']],
    });
    const gap = found.estimates[2]!;
    expect(found.warnings.join()).toMatch(
      /was warmth, fading with a time constant of [\d.]+ s.* next time wait \d+ s/,
    );
    expect(gap.low).toBeLessThan(GAP);
    expect(gap.high).toBeGreaterThan(GAP);
  });

  it('gives no figure when nothing was read after it', () => {
    const tight = (t: number): number => (ROOM + 3e5) * (1 + 0.06 * Math.exp(-t / 5));
    const found = findingOf('chest-decay.yaml', {
      files: fall(tight, 14),
      replace: [['waited: 60 s', 'waited: 1 s']],
    });
    expect(found.usable).toBe(false);
    expect(found.headline).toContain('still cooling');
    expect(found.next).toMatch(/wait [\d.]+ s/);
  });

  it('is taken out by a thermometer in the air', () => {
    const rows = Array.from({ length: 27 }, (_, i) => {
      const t = 5 * i;
      const rise = 0.06 * Math.exp(-t / 20);
      return [t, (throughGap(t) * (1 + rise) - ROOM) / 1e5, TEMPERATURE * (1 + rise) - 273.15] as const;
    });
    const file = csv('time_s,pressure_bar_gauge,temperature_degC', rows);
    const found = findingOf('chest-decay.yaml', { files: { 'chest-decay.csv': file } });
    expect(found.estimates[2]!.value / GAP).toBeCloseTo(1, 2);
  });
});

it('says how long to read on when the gauge hardly fell', () => {
  const found = findingOf('chest-decay.yaml', { files: fall((t) => ROOM + 3e5 - 20 * t, 130) });
  expect(found.usable).toBe(false);
  expect(found.headline).toMatch(/^Too tight, or too short a test: .* below [\d.]+ L\/min ANR\.$/);
  expect(found.next).toMatch(/Read on for/);
});
