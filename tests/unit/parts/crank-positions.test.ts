/** Places in the turn as angles, and angles within one turn. */
import { describe, expect, it } from 'vitest';
import { crankAngle, forwardAngle, FULL_TURN, wrappedAngle } from '../../../src/parts/crank-positions.ts';
import { strokeFraction } from '../../../src/parts/crank-train.ts';

const crank = { crankRadius: 0.03, rodLength: 0.12 };

describe('a crank angle', () => {
  it('is taken as it is given', () => {
    expect(crankAngle(crank, { by: 'angle', angle: -0.3 })).toBe(-0.3);
  });

  it.each([0, 0.1, 0.5, 0.92, 1])(
    'on the outward stroke is where the piston has covered %f of it',
    (fraction) => {
      const angle = crankAngle(crank, { by: 'outward stroke', fraction });
      expect(angle).toBeGreaterThanOrEqual(0);
      expect(angle).toBeLessThanOrEqual(Math.PI);
      expect(strokeFraction(crank, angle)).toBeCloseTo(fraction, 12);
    },
  );

  it.each([0, 0.1, 0.5, 0.92, 1])(
    'on the return stroke is where the piston is back by %f of it',
    (fraction) => {
      const angle = crankAngle(crank, { by: 'return stroke', fraction });
      expect(angle).toBeGreaterThanOrEqual(Math.PI);
      expect(angle).toBeLessThanOrEqual(FULL_TURN);
      expect(strokeFraction(crank, angle)).toBeCloseTo(1 - fraction, 12);
    },
  );

  it('of half the stroke lies before a quarter turn, for the rod leans', () => {
    expect(crankAngle(crank, { by: 'outward stroke', fraction: 0.5 })).toBeLessThan(Math.PI / 2);
  });
});

describe('an angle within one turn', () => {
  it.each([0, 1e-300, -1e-300, -1e-17, 1, -1, FULL_TURN, -FULL_TURN, 3 * FULL_TURN, 1e4, -1e4])(
    'of %d is at least zero and less than a turn',
    (angle) => {
      expect(wrappedAngle(angle)).toBeGreaterThanOrEqual(0);
      expect(wrappedAngle(angle)).toBeLessThan(FULL_TURN);
    },
  );

  it('is the same place', () => {
    for (const angle of [-9, -1, 0.5, 7, 40]) {
      expect(Math.cos(wrappedAngle(angle))).toBeCloseTo(Math.cos(angle), 12);
      expect(Math.sin(wrappedAngle(angle))).toBeCloseTo(Math.sin(angle), 12);
    }
  });

  it('forward from one place to another goes the running way', () => {
    expect(forwardAngle(0.5, 1.5)).toBeCloseTo(1, 14);
    expect(forwardAngle(1.5, 0.5)).toBeCloseTo(FULL_TURN - 1, 14);
    expect(forwardAngle(-0.1, 0.1)).toBeCloseTo(0.2, 14);
    expect(forwardAngle(2, 2)).toBe(0);
  });
});
