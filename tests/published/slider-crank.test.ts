/** Slider-crank kinematics and crank torque: worked examples of theory-of-machines texts, and exact values. */
import { describe, expect, it } from 'vitest';
import {
  angleAtStrokeFraction,
  pistonTravelCurvature,
  pistonTravelRate,
  strokeFraction,
  type CrankTrain,
} from '../../src/parts/crank-train.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, fillCylinder, idealEngine } from '../support/ideal-engine.ts';

const DEGREE = Math.PI / 180;
const RPM = (2 * Math.PI) / 60;

type Law = typeof pistonTravelRate;
const at = (law: Law, crank: CrankTrain, degrees: number): number =>
  law(crank, Math.sin(degrees * DEGREE), Math.cos(degrees * DEGREE));

/** Where a rising function of the angle passes zero on its way down, between two angles [deg], by bisection. */
function downCrossing(value: (degrees: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (value(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

describe('a rod of four crank radii (derived, five figures)', () => {
  const crank = { crankRadius: 1, rodLength: 4 };
  it.each([
    [0, 0, 0, 1.25],
    [30, 0.08267, 0.60911, 0.99501],
    [60, 0.29744, 0.97691, 0.37511],
    [90, 0.56351, 1, -0.2582],
    [120, 0.79744, 0.75514, -0.62489],
    [150, 0.9487, 0.39089, -0.73704],
    [180, 1, 0, -0.75],
  ])(
    '%s°: travel %s of the stroke, speed %s ωR, acceleration %s ω²R',
    (angle, travel, speed, acceleration) => {
      expect(strokeFraction(crank, angle * DEGREE)).toBeCloseTo(travel, 5);
      expect(at(pistonTravelRate, crank, angle)).toBeCloseTo(speed, 5);
      expect(at(pistonTravelCurvature, crank, angle)).toBeCloseTo(acceleration, 5);
      expect(angleAtStrokeFraction(crank, strokeFraction(crank, angle * DEGREE)) / DEGREE).toBeCloseTo(
        angle,
        5,
      );
    },
  );
});

describe('angle at a share of the stroke', () => {
  it.each([0, 0.1, 0.25, 0.5, 0.9, 1])('inverts the travel at %s for any rod', (fraction) => {
    for (const rodLength of [1.2, 2, 4, 40]) {
      const crank = { crankRadius: 1, rodLength };
      expect(strokeFraction(crank, angleAtStrokeFraction(crank, fraction))).toBeCloseTo(fraction, 12);
    }
  });
});

describe('worked examples', () => {
  it('R 300, L 1000 mm, 200 rpm: top speed at 75°, 6.54 m/s (inputs seen, answers from memory)', () => {
    // Khurmi and Gupta, Theory of Machines, chapter 15; a two-term formula, which is 0.4° and 0.3 % off here.
    const crank = { crankRadius: 0.3, rodLength: 1 };
    const angle = downCrossing((degrees) => at(pistonTravelCurvature, crank, degrees), 45, 120);
    const speed = at(pistonTravelRate, crank, angle) * 200 * RPM;
    expect(Math.abs(angle - 75)).toBeLessThan(0.5);
    expectWithin(speed, 6.54, 0.005);
    // Exact kinematics (derived).
    expect(angle).toBeCloseTo(74.53, 2);
    expectWithin(speed, 6.562, 1e-3);
  });

  // Same source: lengths of a drawn construction (seen), the angle from memory; drawing to 1.5–2 %.
  it.each([
    { R: 150, L: 600, speed: 450 * RPM, angle: 60, v: 6.83, a: 124, drawing: 0.015 },
    { R: 200, L: 700, speed: 120, angle: 30, v: 15.24, a: 2880, drawing: 0.02 },
  ])('R $R, L $L mm at $angle°: $v m/s, $a m/s² (drawn)', ({ R, L, speed, angle, v, a, drawing }) => {
    const crank = { crankRadius: R * 1e-3, rodLength: L * 1e-3 };
    expectWithin(at(pistonTravelRate, crank, angle) * speed, v, drawing);
    expectWithin(at(pistonTravelCurvature, crank, angle) * speed ** 2, a, drawing);
  });

  it('R 0.1, L 0.2 m: no acceleration at 68.5° (seen, two terms), exactly 67.70° (derived)', () => {
    // An example on a mailing list of January 1998, whose angle is right. With so short a rod the two-term formula is 0.8° off.
    const crank = { crankRadius: 0.1, rodLength: 0.2 };
    const angle = downCrossing((degrees) => at(pistonTravelCurvature, crank, degrees), 30, 120);
    expect(Math.abs(angle - 68.5)).toBeLessThan(1);
    expect(angle).toBeCloseTo(67.7, 2);
  });
});

describe('a steam engine of 300 × 600 mm, rod 1250 mm, 60 kg, 240 rpm, 60° after dead centre', () => {
  // Worked example at sarthaks.com/491480 (forces seen, torque derived): 1.125 MPa before, 0.125 MPa behind the piston.
  const { system, y } = atStart(
    idealEngine({
      cylinder: { bore: 0.3, stroke: 0.6, rod_length: 1.25, reciprocating_mass: 60 },
      atmosphere: { pressure: 0.125e6, temperature: 288.15 },
      start: { crank_angle: 60 * DEGREE, hand_speed: 240 * RPM },
    }),
  );
  fillCylinder(system, y, 1.125e6, 450);
  const { gasTorque, inertiaTorque } = system.observe(y);
  const lever = at(pistonTravelRate, system.engine.crank, 60);

  it('carries 70 685.83 N on the piston (seen)', () => {
    expectWithin(gasTorque / lever, 70_685.83, 1e-6);
  });
  it('takes 4319.68 N to speed up the piston (seen)', () => {
    // The source stops after two terms of the rod series, 0.03 % here.
    expectWithin(-inertiaTorque / lever, 4319.68, 5e-4);
  });
  it('turns the crank with 19.357 kN m (derived)', () => {
    expectWithin(gasTorque + inertiaTorque, 19_357, 5e-4);
  });
});
