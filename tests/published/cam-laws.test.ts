/**
 * Cam laws by their peaks: largest speed v β/h and acceleration a β²/h of a rise h over an angle β, by differentiation.
 * Sources: machine-design tables. Harmonic and cycloidal formulas (seen): a technical university's examination solution;
 * modified sine (seen): a mechanisms course routine that prints 5.5279571; 3-4-5 polynomial: from memory, and exact.
 */
import { describe, expect, it } from 'vitest';
import { camFor, spoolLift } from '../../src/parts/cams/cam.ts';
import { camLawNamed, camLaws } from '../../src/parts/cams/cam-law.ts';
import { expectWithin } from '../support/expect-within.ts';

type Law = (u: number) => number;

const STEP = 2e-4;

/** Central differences, fourth order. */
const slope =
  (law: Law, h = STEP): Law =>
  (u) =>
    (8 * (law(u + h) - law(u - h)) - (law(u + 2 * h) - law(u - 2 * h))) / (12 * h);
const curvature =
  (law: Law, h = STEP): Law =>
  (u) =>
    (16 * (law(u + h) + law(u - h)) - (law(u + 2 * h) + law(u - 2 * h)) - 30 * law(u)) / (12 * h * h);

/** The largest value over the rise, at places that step over neither end. */
function peak(law: Law): number {
  const n = 4000;
  const places = Array.from({ length: n - 3 }, (_, i) => (i + 2) / n);
  return Math.max(...places.map(law));
}

describe('peak coefficients', () => {
  it.each([
    { name: 'harmonic', speed: Math.PI / 2, acceleration: Math.PI ** 2 / 2, mark: 'seen' },
    { name: 'cycloidal', speed: 2, acceleration: 2 * Math.PI, mark: 'seen' },
    { name: '3-4-5 polynomial', speed: 15 / 8, acceleration: 10 / Math.sqrt(3), mark: 'from memory' },
    { name: 'modified sine', speed: 1.7596, acceleration: 5.5279571, mark: 'seen' },
  ])('$name: $speed and $acceleration ($mark)', ({ name, speed, acceleration }) => {
    const law = camLawNamed(name);
    const lift: Law = (u) => law.lift(u);
    // 1e-5: places 1/4000 apart miss a smooth peak by less, differences add less still.
    expectWithin(peak(slope(lift)), speed, 1e-5);
    expectWithin(peak(curvature(lift)), acceleration, 1e-5);
  });

  it('every law is among them', () => {
    expect(camLaws.map(({ name }) => name)).toEqual([
      'harmonic',
      'cycloidal',
      '3-4-5 polynomial',
      'modified sine',
    ]);
  });

  it.each(camLaws)('$name rises from 0 to 1, alike from either end', (law) => {
    expect(law.lift(0)).toBeCloseTo(0, 14);
    expect(law.lift(1)).toBeCloseTo(1, 14);
    for (const u of [0.05, 0.125, 0.2, 0.4]) expect(law.lift(u) + law.lift(1 - u)).toBeCloseTo(1, 12);
  });
});

describe('a cam of 8 mm lift over 60° at 1200 rpm', () => {
  // Same examination solution, which carries three to four figures through (its 723.5 is exactly 723.8).
  it.each([
    { name: 'harmonic', speed: 1.508, acceleration: 568.4 },
    { name: 'cycloidal', speed: 1.92, acceleration: 723.5 },
  ])('$name: $speed m/s and $acceleration m/s² (seen)', ({ name, speed, acceleration }) => {
    const flank = Math.PI / 3;
    const cam = camFor({
      law: camLawNamed(name),
      lift: 8e-3,
      lash: 0,
      lap: 0,
      flank,
      closingFlank: flank,
      opens: 0,
      closes: 4 * flank,
    });
    const omega = (1200 * 2 * Math.PI) / 60;
    const lift: Law = (u) => spoolLift(cam, u * flank);
    expectWithin((peak(slope(lift)) * omega) / flank, speed, 1e-3);
    expectWithin(peak(curvature(lift)) * (omega / flank) ** 2, acceleration, 1e-3);
  });
});
