/** What is left of a motion that is about to stop, and what a run that cannot go on says. */
import { describe, expect, it } from 'vitest';
import { kineticEnergy } from '../../../src/model/ledger.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { loads } from '../../../src/parts/loads/registry.ts';
import { nextMilestone } from '../../../src/run/motion.ts';
import { torqueBalance } from '../../../src/run/torque-balance.ts';
import { chosen } from '../../support/chosen.ts';
import { systemOf } from '../../support/drive.ts';
import {
  compressCylinder,
  CYLINDER,
  directions,
  GIVEN_UP,
  motionBy,
  tightSpec,
  tightSystem,
  type Beginning,
} from '../../support/motion-by-law.ts';
import { DEGREE } from '../../support/reference-engine.ts';

const { slots } = tightSystem;

describe('what is left of a motion', () => {
  /** Of a crank at 120° that turns so fast that it has that share of the energy that is gone at once. */
  function leftOver(share: number, speedSign: 1 | -1 = 1, pressure = 1) {
    const made = motionBy({ inTime: () => GIVEN_UP }, { angle: 120 * DEGREE, speed: speedSign });
    compressCylinder(made.y, pressure);
    const { applied, holding } = torqueBalance(tightSystem, made.y);
    made.y[SLOT.speed] =
      speedSign *
      Math.sqrt(
        (2 * share * 1e-12 * (holding - speedSign * applied)) / tightSystem.momentOfInertia(120 * DEGREE),
      );
    return made;
  }

  it.each([1, -1] as const)(
    'that would stop within a millionth of a micron goes into the bearings (%i)',
    (sign) => {
      const { motion, y, asked } = leftOver(0.9, sign);
      const kinetic = kineticEnergy(tightSystem, y);
      nextMilestone(motion);
      expect(y[SLOT.speed]).toBe(0);
      expect(y[slots.bearingWork]).toBe(kinetic);
      expect(directions(asked)).toEqual([0]);
    },
  );

  it.each([
    { share: 0.95, pressure: 1.2, ends: true },
    { share: 1.05, pressure: 1.2, ends: false },
    { share: 0.95, pressure: 0.8, ends: true },
    { share: 1.05, pressure: 0.8, ends: false },
  ])(
    'is counted with what the air pushes: $share of it at $pressure of the room',
    ({ share, pressure, ends }) => {
      const { motion, y, asked } = leftOver(share, 1, pressure);
      nextMilestone(motion);
      expect(directions(asked)).toEqual([ends ? 0 : 1]);
      expect(y[slots.bearingWork]! > 0).toBe(ends);
    },
  );

  it('is followed however little it is where the air pushes on', () => {
    const { motion, y, asked } = leftOver(0.9);
    compressCylinder(y, 4);
    nextMilestone(motion);
    expect(directions(asked)).toEqual([1]);
    expect(y[slots.bearingWork]).toBe(0);
  });

  it('counts what the load takes at its speed where that is more than what holds at rest', () => {
    const load = chosen(loads, 'formula', { torque: (speed: number) => (speed > 0 ? 50 : 0) });
    const loaded = systemOf({ ...tightSpec, load });
    const { motion, y, asked } = motionBy({ inTime: () => GIVEN_UP }, { angle: 120 * DEGREE }, loaded);
    const { holding } = torqueBalance(loaded, y);
    expect(holding).toBeLessThan(5);
    // Less than 50 N m stop within a trillionth of a radian, far more than what holds does.
    y[SLOT.speed] = Math.sqrt((2e-12 * 40) / loaded.momentOfInertia(120 * DEGREE));
    nextMilestone(motion);
    expect(y[SLOT.speed]).toBe(0);
    expect(directions(asked)).toEqual([0]);
  });
});

describe('a run that cannot go on', () => {
  const beginnings: readonly Beginning[] = [
    { angle: 0.5, speed: 0 },
    { angle: 0.5, speed: 0.8 },
    { angle: 0.5, speed: 30 },
  ];

  it.each(beginnings)('for its steps or for a number that is none says so ($speed rad/s)', (beginning) => {
    const limit = motionBy({ inTime: () => GIVEN_UP, inAngle: () => GIVEN_UP }, beginning);
    expect(nextMilestone(limit.motion)).toEqual({ kind: 'step-limit' });
    const arrival = { reason: 'non-finite', x: 0, component: 5 } as const;
    const lost = motionBy({ inTime: () => arrival, inAngle: () => arrival }, beginning);
    expect(nextMilestone(lost.motion)).toEqual({ kind: 'non-finite', component: 5 });
  });

  it.each([
    { slot: SLOT.crankAngle, value: NaN, component: SLOT.crankAngle },
    { slot: SLOT.speed, value: Infinity, component: SLOT.speed },
    { slot: slots.mass(0), value: 0, component: slots.mass(0) },
    { slot: slots.mass(0), value: -1, component: slots.mass(0) },
    { slot: slots.energy(CYLINDER), value: 0, component: slots.energy(CYLINDER) },
  ])('for $value in component $slot says so', ({ slot, value, component }) => {
    const spoilt = motionBy(
      {
        inAngle: (y, x) => {
          y[slot] = value;
          return { reason: 'event', x, event: 0 };
        },
      },
      { angle: 0.5, speed: 30 },
    );
    expect(nextMilestone(spoilt.motion)).toEqual({ kind: 'non-finite', component });
  });

  it('does not mind totals below zero, nor a crank at zero', () => {
    const { motion } = motionBy(
      {
        inAngle: (y, x) => {
          y[slots.gasWork] = -3;
          y[SLOT.time] = 0;
          y[SLOT.crankAngle] = x;
          return { reason: 'end', x };
        },
      },
      { angle: -0.5, speed: 30 },
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(motion.y[SLOT.crankAngle]).toBe(0);
  });
});
