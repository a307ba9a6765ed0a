import { expect, test } from 'vitest';
import {
  liesBetween,
  lossFreeWork,
  meanBetween,
  openTogether,
  turnedBetween,
  valueAt,
} from '../../../src/verdict/cycle-reading.ts';
import { idealDiagram } from '../../../src/report/svg/ideal-diagram.ts';
import { settledResult } from '../report/synthetic-result.ts';

const deg = Math.PI / 180;
const { engine, settled } = settledResult;
const profile = settled!.profile;

test('angles are taken in the running direction, across top dead centre too', () => {
  expect(turnedBetween(350 * deg, 10 * deg)).toBeCloseTo(20 * deg, 12);
  expect(liesBetween(5 * deg, 350 * deg, 10 * deg)).toBe(true);
  expect(liesBetween(20 * deg, 350 * deg, 10 * deg)).toBe(false);
});

test.each([
  ['never', { admission: 354, cutOff: 96, release: 158, compression: 318 }, 0],
  ['before dead centre', { admission: 340, cutOff: 96, release: 158, compression: 352 }, 12],
  ['before the exhaust', { admission: 354, cutOff: 170, release: 158, compression: 318 }, 12],
])('ports open together %s', (_when, events, overlap) => {
  const [admission, cutOff, release, compression] = Object.values(events).map((angle) => angle * deg);
  expect(
    openTogether({ admission: admission!, cutOff: cutOff!, release: release!, compression: compression! }) /
      deg,
  ).toBeCloseTo(overlap, 9);
});

test('the profile is read between its degrees', () => {
  expect(valueAt(profile.crankAngle, 12.25 * deg)).toBeCloseTo(12.25 * deg, 12);
  expect(valueAt(profile.ends[0].volume, 2 * Math.PI)).toBeCloseTo(profile.ends[0].volume[0]!, 12);
});

test('a mean over part of the turn weighs every degree alike', () => {
  expect(meanBetween(profile, 350 * deg, 10 * deg, () => 3)).toBe(3);
  expect(meanBetween(profile, 0, 90 * deg, (p, i) => p.crankAngle[i]!) / deg).toBeCloseTo(44.5, 9);
  expect(meanBetween(profile, 0, 0, () => 3)).toBe(0);
});

/** Shoelace rule; the expansion is a curve of 24 pieces. */
test('the loss-free work is the area of the loss-free diagram', () => {
  const corners = idealDiagram(engine, profile.ends[0]);
  const area = corners.reduce((sum, [v, p], i) => {
    const [nextV, nextP] = corners[(i + 1) % corners.length]!;
    return sum + (v * nextP - nextV * p) / 2;
  }, 0);
  expect(-area / lossFreeWork(engine)).toBeCloseTo(1, 3);
});
