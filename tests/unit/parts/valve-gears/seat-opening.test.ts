/** The opening at a seat: ball against a search for the nearest point, poppet, and the bore as the limit of both. */
import { describe, expect, it } from 'vitest';
import {
  liftWhereBoreLimits,
  seatOpening,
  type LiftedSeat,
} from '../../../../src/parts/valve-gears/seat-opening.ts';

const ball: LiftedSeat = { shape: 'ball', seatDiameter: 6, valveDiameter: 10, pinDiameter: 2 };
const poppet: LiftedSeat = { ...ball, shape: 'flat poppet' };
const bore = (Math.PI * (36 - 4)) / 4;

/** Ball of radius 5 with its centre lifted to 4 + lift above the edge of radius 3: the cone to its nearest point. */
function coneToBall(lift: number): number {
  const centre = 4 + lift;
  let nearest = { distance: Infinity, radius: 0 };
  for (let i = 0; i <= 200_000; i += 1) {
    const down = (i / 200_000) * (Math.PI / 2);
    const [radius, height] = [5 * Math.sin(down), centre - 5 * Math.cos(down)];
    const distance = Math.hypot(radius - 3, height);
    if (distance < nearest.distance) nearest = { distance, radius };
  }
  return Math.PI * (3 + nearest.radius) * nearest.distance;
}

describe('a ball', () => {
  it.each([0.05, 0.3, 0.8, 1.2])('lifted by %s opens the least cone between edge and ball', (lift) => {
    expect(seatOpening(ball, lift)).toBeCloseTo(coneToBall(lift), 3);
  });

  it('a little lifted opens π d s times the sine of half the cone on which it sits', () => {
    const lift = 1e-6;
    expect(seatOpening(ball, lift) / (Math.PI * 6 * lift * (4 / 5))).toBeCloseTo(1, 6);
  });
});

describe('a flat poppet', () => {
  it('opens a cylinder', () => {
    expect(seatOpening(poppet, 0.5)).toBeCloseTo(3 * Math.PI, 12);
  });
});

describe.each([ball, poppet])('a $shape', (seat) => {
  it('on its seat is shut', () => {
    expect(seatOpening(seat, 0)).toBe(0);
  });

  it('lifted high opens no more than the bore beside the pin', () => {
    expect(seatOpening(seat, 5)).toBeCloseTo(bore, 12);
  });

  it('is limited by the bore from the lift found for it', () => {
    const limit = liftWhereBoreLimits(seat, 5)!;
    expect(seatOpening(seat, limit * (1 - 1e-9))).toBeLessThan(bore);
    expect(seatOpening(seat, limit)).toBeCloseTo(bore, 12);
    expect(liftWhereBoreLimits(seat, 0.99 * limit)).toBeUndefined();
  });
});

it('a flat poppet without a pin is limited from a quarter of the bore', () => {
  expect(liftWhereBoreLimits({ ...poppet, pinDiameter: 0 }, 5)).toBeCloseTo(6 / 4, 12);
});
