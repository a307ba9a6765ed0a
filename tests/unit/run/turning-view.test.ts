/** A state that holds the kinetic energy E = ½ J ω², as seen by somebody who thinks in speeds. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import type { Journey } from '../../../src/numerics/integrator.ts';
import { holdEnergy, holdSpeed, turningJourney } from '../../../src/run/turning-view.ts';
import { systemOf } from '../../support/drive.ts';
import { referenceSpec } from '../../support/reference-engine.ts';
import { readerOf, stepThrough } from '../../support/stepper-by-law.ts';

const system = systemOf(referenceSpec());
const ANGLE = 1.2;
const energyAt = (speed: number): number => 0.5 * system.momentOfInertia(ANGLE) * speed ** 2;

/** A state that holds the energy of a speed. */
function heldAt(speed: number): Float64Array {
  const y = initialState(system, ANGLE, speed);
  holdEnergy(system, y);
  return y;
}

describe('kinetic energy in the place of the speed', () => {
  it('is half J ω², pistons and all, and comes back as the speed', () => {
    const y = heldAt(30);
    expect(y[SLOT.speed]).toBeCloseTo(energyAt(30), 12);
    expect(system.momentOfInertia(ANGLE)).toBeGreaterThan(1.005 * system.momentOfInertia(0));
    holdSpeed(system, y);
    expect(y).toEqual(initialState(system, ANGLE, y[SLOT.speed]!));
    expect(y[SLOT.speed]).toBeCloseTo(30, 12);
  });

  it('that has come out below zero is no speed', () => {
    const y = heldAt(30);
    y[SLOT.speed] = -1e-12;
    holdSpeed(system, y);
    expect(y[SLOT.speed]).toBe(0);
  });
});

describe('a journey whose state holds the energy', () => {
  const y = heldAt(30);

  it('shows events the speed, and everything else as it is', () => {
    const seen: number[] = [];
    const event = {
      value: (x: number, component: (i: number) => number) => {
        seen.push(x, component(SLOT.crankAngle), component(SLOT.speed), component(SLOT.speed + 1));
        return 7;
      },
    };
    const { events } = turningJourney(system, { events: [event], stepLimit: 5 });
    expect(events!.map((told) => told.value(ANGLE, readerOf(y)))).toEqual([7]);
    expect(seen[0]).toBe(ANGLE);
    expect(seen[1]).toBe(y[SLOT.crankAngle]);
    expect(seen[2]).toBeCloseTo(30, 12);
    expect(seen[3]).toBe(y[SLOT.speed + 1]);
  });

  it('shows watchers steps with the speed, component by component and whole', () => {
    const seen: number[] = [];
    const out = new Float64Array(y.length);
    const { onStep } = turningJourney(system, {
      stepLimit: 5,
      onStep: (step) => {
        step.interpolate(ANGLE, out);
        seen.push(
          step.from,
          step.to,
          step.component(SLOT.speed, ANGLE),
          step.component(SLOT.speed + 1, ANGLE),
        );
      },
    });
    onStep!(stepThrough(y, 1, ANGLE));
    expect(seen.slice(0, 2)).toEqual([1, ANGLE]);
    expect(seen[2]).toBeCloseTo(30, 12);
    expect(seen[3]).toBe(y[SLOT.speed + 1]);
    expect(out[SLOT.speed]).toBeCloseTo(30, 12);
    expect(out.with(SLOT.speed, 0)).toEqual(y.with(SLOT.speed, 0));
  });

  it('without events and watchers stays without', () => {
    const bare: Journey = { stepLimit: 5, likeness: 3 };
    const { events, onStep, ...others } = turningJourney(system, bare);
    expect([events, onStep]).toEqual([undefined, undefined]);
    expect(others).toEqual(bare);
  });

  it('is calm above an energy that is no less than that of the speed, wherever the crank stands', () => {
    const { calmAbove } = turningJourney(system, {
      stepLimit: 5,
      calmAbove: { component: SLOT.speed, value: 2 },
    });
    const most = Math.max(
      ...Array.from({ length: 360 }, (_, i) => 2 * system.momentOfInertia((i * Math.PI) / 180)),
    );
    expect(calmAbove!.component).toBe(SLOT.speed);
    expect(calmAbove!.value).toBeGreaterThanOrEqual(most);
    expect(calmAbove!.value).toBeLessThan(1.01 * most);
  });

  it('is calm by any other component as it is told', () => {
    const calmAbove = { component: SLOT.speed + 1, value: 2 };
    expect(turningJourney(system, { stepLimit: 5, calmAbove }).calmAbove).toEqual(calmAbove);
  });
});
