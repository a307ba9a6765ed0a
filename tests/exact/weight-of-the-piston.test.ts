/**
 * Weight of the pistons: an upright engine is helped on the way down and hindered on the way up by the same, M g x. Over a
 * turn nothing is left; inverted is upright with the sign turned.
 */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../src/model/initial-state.ts';
import { ledgerResiduals } from '../../src/model/ledger.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { Cylinder } from '../../src/parts/cylinder.ts';
import { pistonTravelRate } from '../../src/parts/crank-train.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { engineStepper } from '../../src/run/stepper.ts';
import { torqueBalance } from '../../src/run/torque-balance.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { systemOf } from '../support/drive.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, idealEngine, idealGear, oneTurn } from '../support/ideal-engine.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const G = 9.80665;
const MASS = 0.4;
const J = 0.01;

type Attitude = Cylinder['attitude'];

/** Hardly any air to move, nothing but the weight. */
const bare = (attitude: Attitude, cylinders = 1) =>
  idealEngine({
    cylinder: { bore: 1e-3, reciprocating_mass: MASS, attitude, cylinders },
    flywheel: givenFlywheel.choose({ moment_of_inertia: J }),
    valve_gear: idealGear({ area: () => 2e-8, exhaust: 'always' }),
    start: { hand_speed: 20 },
  });

const weightTorque = (attitude: Attitude, angle: number): number => {
  const { system } = atStart(bare(attitude));
  return system.observe(initialState(system, angle, 10)).gravityTorque;
};

describe('the torque of the weight', () => {
  it('is the weight times the lever, down the way out of an upright engine', () => {
    const { engine } = systemOf(bare('upright'));
    for (const angle of [0.5, 1.5, 3, 4, 6]) {
      const lever = pistonTravelRate(engine.crank, Math.sin(angle), Math.cos(angle));
      expectWithin(weightTorque('upright', angle), MASS * G * lever, 1e-12);
    }
  });

  it('inverted is the opposite, horizontal none', () => {
    for (const angle of [0.5, 1.5, 3, 4, 6]) {
      expect(weightTorque('inverted', angle)).toBe(-weightTorque('upright', angle));
      expect(Math.abs(weightTorque('horizontal', angle))).toBe(0);
    }
  });

  it('moves an engine at rest, or holds it', () => {
    const { system } = atStart(bare('upright'));
    const { applied } = torqueBalance(system, initialState(system, 1, 0));
    expectWithin(applied, weightTorque('upright', 1), 1e-9);
  });

  it('of two opposite pistons nearly balances, but for the leaning rod', () => {
    const { system } = atStart(bare('upright', 2));
    const both = [0.5, 1, 2].map((angle) => system.observe(initialState(system, angle, 0)).gravityTorque);
    for (const torque of both) expect(Math.abs(torque)).toBeLessThan(0.3 * weightTorque('upright', 1.5));
  });
});

describe('the work of the weight', () => {
  it.each([
    ['upright', 1],
    ['inverted', -1],
    ['horizontal', 0],
  ] as const)(
    '%s: M g times the stroke down to bottom dead centre, found in the flywheel',
    (attitude, sign) => {
      const { system, y } = atStart(bare(attitude));
      expect(engineStepper(system).inAngle(y, Math.PI, { stepLimit: 10_000 }).reason).toBe('end');
      const work = sign * MASS * G * 0.06;
      expect(Math.abs(y[system.slots.gravityWork]! - work)).toBeLessThan(1e-7);
      // At either dead centre the piston stands still, so that only the flywheel has energy; the air moves a little.
      const gained = 0.5 * J * (y[SLOT.speed]! ** 2 - 20 ** 2);
      expect(Math.abs(gained - work)).toBeLessThan(0.005);
    },
  );

  it('over a turn is nothing, and the ledgers know it', () => {
    // With friction, so that there is a throughput to compare with; a bare flywheel has next to none.
    const rubbing = { ...bare('upright').friction, running_torque: 0.2, breakaway_torque: 0.2 };
    const { system, y } = atStart({ ...bare('upright'), friction: rubbing });
    const { after, residuals } = oneTurn(system, y);
    expect(Math.abs(after[system.slots.gravityWork]!)).toBeLessThan(1e-7);
    expect(residuals.energy).toBeLessThan(1e-6);
  });

  it('is in the ledgers half a turn on', () => {
    const { system, y } = atStart(bare('upright'));
    const before = y.slice();
    const stepper = engineStepper(system);
    stepper.inAngle(y, Math.PI, { stepLimit: 10_000 });
    const steps = stepper.counters.acceptedSteps;
    const forgetful = y.slice();
    forgetful[system.slots.gravityWork] = 0;
    expect(ledgerResiduals(system, before, y, steps).energy).toBeLessThan(1e-6);
    expect(ledgerResiduals(system, before, forgetful, steps).energy).toBeGreaterThan(0.01);
  });
});

describe('a whole engine', () => {
  it('settles nearly alike however it stands', () => {
    const speeds = (['horizontal', 'upright', 'inverted'] as const).map(
      (attitude) => runEngine(referenceSpec({ cylinder: { attitude } })).settled!.speed,
    );
    for (const speed of speeds) expectWithin(speed, speeds[0]!, 5e-3);
    expect(new Set(speeds).size).toBe(3);
  });
});
