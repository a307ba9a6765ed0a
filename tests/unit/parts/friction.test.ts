/** Friction of bearings and piston at its limits. */
import { describe, expect, it } from 'vitest';
import {
  bearingTorque,
  frictionComplaints,
  glandFriction,
  pistonFriction,
} from '../../../src/parts/friction.ts';

const law = {
  running_torque: 0.2,
  breakaway_torque: 0.5,
  stribeck_speed: 2,
  viscous_torque: 0.01,
  piston_force: 6,
  piston_force_per_pressure: 5e-5,
  gland_force: 4,
  gland_force_per_pressure: 2e-5,
};

describe('the bearings', () => {
  it('hold with the break-away torque at rest', () => {
    expect(bearingTorque(law, 0)).toBe(0.5);
  });

  it('take the running torque and the viscous part at speed', () => {
    expect(bearingTorque(law, 100)).toBeCloseTo(0.2 + 0.01 * 100, 12);
  });

  it('have given way by 1 − 1/e at the Stribeck speed', () => {
    expect(bearingTorque(law, 2) - 0.02).toBeCloseTo(0.2 + 0.3 / Math.E, 12);
  });

  it('without extra hold at rest take the same at any speed', () => {
    const plain = { ...law, breakaway_torque: 0.2, viscous_torque: 0 };
    expect([0, 0.5, 2, 50].map((speed) => bearingTorque(plain, speed))).toEqual([0.2, 0.2, 0.2, 0.2]);
  });

  it('do not move off more easily than they turn', () => {
    expect(frictionComplaints({ ...law, breakaway_torque: 0.2 })).toEqual([]);
    const [complaint] = frictionComplaints({ ...law, breakaway_torque: 0.19 });
    expect(complaint!.path).toEqual(['breakaway_torque']);
  });
});

describe('the gland', () => {
  it('grips the rod with its plain force, and harder under pressure and suction', () => {
    expect(glandFriction(law, 0)).toBe(4);
    expect(glandFriction(law, 3e5)).toBeCloseTo(10, 12);
    expect(glandFriction(law, -3e5)).toBe(glandFriction(law, 3e5));
  });
});

describe('the piston', () => {
  it('slides with its plain force without pressure', () => {
    expect(pistonFriction(law, 0)).toBe(6);
  });

  it('is pressed harder by pressure and by suction alike', () => {
    expect(pistonFriction(law, 3e5)).toBeCloseTo(21, 12);
    expect(pistonFriction(law, -3e5)).toBe(pistonFriction(law, 3e5));
  });
});
