/** Kinematics of the oscillating cylinder: against coordinates, differences, and the slider-crank that stands in for it. */
import { describe, expect, it } from 'vitest';
import { pistonTravel } from '../../../src/parts/crank-train.ts';
import {
  angleOfGreatestSwing,
  anglesAtSwing,
  greatestSwing,
  oscillatingTravel,
  oscillatingTravelCurvature,
  oscillatingTravelRate,
  swing,
  swingRate,
  type OscillatingTrain,
} from '../../../src/parts/oscillating-travel.ts';

const DEGREE = Math.PI / 180;
const trains: readonly OscillatingTrain[] = [
  { crankRadius: 8, trunnionDistance: 32 },
  { crankRadius: 1, trunnionDistance: 1.3 },
  { crankRadius: 30, trunnionDistance: 240 },
];
const angles = [-170, -60, -1, 0, 5, 45, 76, 90, 133, 180, 260].map((degrees) => degrees * DEGREE);

type Law = typeof oscillatingTravel;
const at = (law: Law, train: OscillatingTrain, angle: number): number =>
  law(train, Math.sin(angle), Math.cos(angle));

/** Central difference, fourth order. */
function slope(f: (x: number) => number, x: number): number {
  const h = 1e-3;
  return (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
}

describe.each(trains)('crank $crankRadius, trunnion at $trunnionDistance', (train) => {
  const { crankRadius: r, trunnionDistance: l } = train;

  it('travels from nothing at top dead centre to twice the crank at the bottom', () => {
    expect(at(oscillatingTravel, train, 0)).toBeCloseTo(0, 12);
    expect(at(oscillatingTravel, train, Math.PI)).toBeCloseTo(2 * r, 12);
  });

  it('follows the cosine rule', () => {
    for (const angle of angles) {
      const distance = Math.sqrt(r * r + l * l - 2 * r * l * Math.cos(angle));
      expect(at(oscillatingTravel, train, angle)).toBeCloseTo(distance - (l - r), 10);
    }
  });

  it('has the rates of its travel', () => {
    for (const angle of angles) {
      const travel = (x: number): number => at(oscillatingTravel, train, x);
      const rate = (x: number): number => at(oscillatingTravelRate, train, x);
      expect(rate(angle) / r).toBeCloseTo(slope(travel, angle) / r, 8);
      expect(at(oscillatingTravelCurvature, train, angle) / r).toBeCloseTo(slope(rate, angle) / r, 8);
      expect(swingRate(train, angle)).toBeCloseTo(
        slope((x) => swing(train, x), angle),
        8,
      );
    }
  });

  it('swings so that rod and crank stand square at the most', () => {
    const most = angleOfGreatestSwing(train);
    expect(swing(train, most)).toBeCloseTo(greatestSwing(train), 12);
    expect(swingRate(train, most)).toBeCloseTo(0, 12);
    // Pythagoras: the pin on a tangent from the trunnion to the crank circle.
    const distance = at(oscillatingTravel, train, most) + l - r;
    expect(distance ** 2 + r ** 2).toBeCloseTo(l ** 2, 8);
  });

  it('passes a swing at the angles found for it', () => {
    for (const share of [-0.99, -0.4, 0, 0.3, 0.95]) {
      const wanted = share * greatestSwing(train);
      const [out, back] = anglesAtSwing(train, wanted)!;
      expect(swing(train, out)).toBeCloseTo(wanted, 12);
      expect(swing(train, back)).toBeCloseTo(wanted, 12);
      expect(swingRate(train, out)).toBeGreaterThan(0);
      expect(swingRate(train, back)).toBeLessThan(0);
    }
    expect(anglesAtSwing(train, 1.01 * greatestSwing(train))).toBeUndefined();
  });
});

describe('a slider-crank with a rod as long as the trunnion is far', () => {
  // The figures of docs/valve-gears/oscillating-cylinder.md, shares of the stroke.
  it.each([
    { ratio: 2.5, most: 0.0164 },
    { ratio: 3, most: 0.0111 },
    { ratio: 4, most: 0.0062 },
    { ratio: 5, most: 0.0039 },
    { ratio: 6, most: 0.0027 },
  ])('trunnion at $ratio cranks: off by $most of the stroke', ({ ratio, most }) => {
    const deviations = Array.from({ length: 361 }, (_, degrees) => {
      const [sin, cos] = [Math.sin(degrees * DEGREE), Math.cos(degrees * DEGREE)];
      const exact = oscillatingTravel({ crankRadius: 1, trunnionDistance: ratio }, sin, cos);
      return Math.abs(exact - pistonTravel({ crankRadius: 1, rodLength: ratio }, sin, cos)) / 2;
    });
    expect(Math.max(...deviations)).toBeCloseTo(most, 4);
  });
});
