/**
 * A cylinder with its ports shut, without wall heat, is a spring: p V^γ stays, a turn by hand gives everything back, and
 * backwards is forwards seen in a mirror.
 */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { engineStepper } from '../../src/run/stepper.ts';
import { atStart, fillCylinder, idealEngine, oneTurn } from '../support/ideal-engine.ts';
import { expectWithin } from '../support/expect-within.ts';

const GAMMA = 1.4;

function springAt(speed: number): { readonly system: EngineSystem; readonly y: Float64Array } {
  const spring = atStart(
    idealEngine({
      flywheel: givenFlywheel.choose({ moment_of_inertia: 0.05 }),
      cylinder: { reciprocating_mass: 0.3, clearance: 0.3 },
      start: { hand_speed: Math.abs(speed) },
    }),
  );
  spring.y[SLOT.speed] = speed;
  fillCylinder(spring.system, spring.y, 6e5, 400);
  return spring;
}

describe('a closed cylinder turned round by hand', () => {
  const { system, y } = springAt(60);
  const { before, after, profile } = oneTurn(system, y);
  const [{ pressure, volume }] = profile.ends;

  it('keeps p V^γ at every degree', () => {
    const constant = pressure[0]! * volume[0]! ** GAMMA;
    for (const [i, now] of pressure.entries()) {
      // Between the integrator's steps, that is: by its interpolation.
      expectWithin(now * volume[i]! ** GAMMA, constant, 5e-6);
    }
  });

  it('is its old self after the turn: air, speed, no work left over', () => {
    const { slots } = system;
    for (const slot of [slots.mass(1), slots.energy(1), slots.mass(0), slots.energy(0), SLOT.speed])
      expectWithin(after[slot]!, before[slot]!, 1e-7);
    const swing = 6e5 * system.engine.ends[0].clearanceVolume;
    expect(Math.abs(after[slots.gasWork]!)).toBeLessThan(1e-6 * swing);
  });

  it('gains in speed what the air loses in pressure', () => {
    const energyAtDeadCentre = (i: number): number => {
      const kinetic = 0.5 * 0.05 * profile.speed[i]! ** 2;
      const air = (pressure[i]! * volume[i]!) / (GAMMA - 1);
      return kinetic + air + 101_325 * volume[i]!;
    };
    expect(profile.speed[180]! - profile.speed[0]!).toBeGreaterThan(1);
    expectWithin(energyAtDeadCentre(180), energyAtDeadCentre(0), 1e-7);
  });
});

describe('the same cylinder turned the other way', () => {
  it('goes through the same states at mirrored angles', () => {
    const forward = springAt(60);
    const backward = springAt(-60);
    const ahead = engineStepper(forward.system);
    const back = engineStepper(backward.system);
    const { slots } = forward.system;
    for (const time of [0.01, 0.03, 0.06, 0.1]) {
      expect(ahead.inTime(1, forward.y, time, { stepLimit: 10_000 }).reason).toBe('end');
      expect(back.inTime(-1, backward.y, time, { stepLimit: 10_000 }).reason).toBe('end');
      expect(backward.y[SLOT.crankAngle]).toBe(-forward.y[SLOT.crankAngle]!);
      expect(backward.y[SLOT.speed]).toBe(-forward.y[SLOT.speed]!);
      expect(backward.y[slots.energy(1)]).toBe(forward.y[slots.energy(1)]);
      expect(backward.y[slots.gasWork]).toBe(forward.y[slots.gasWork]);
    }
    expect(forward.y[SLOT.crankAngle]).toBeGreaterThan(5);
  });
});
