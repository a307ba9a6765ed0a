/** The ledgers notice a loss of one part in ten thousand anywhere in the derivative. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import { differenceJacobian } from '../../src/numerics/difference-jacobian.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { chosen } from '../support/chosen.ts';
import { measuredTurn, systemOf } from '../support/drive.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const LOSS = 1e-4;
const LIMIT = 1e-6;

/** With a wall that gives a fair share of the energy. */
const wall_heat = chosen(wallHeats, 'constant', { coefficient: 1000 });
const honest = systemOf(referenceSpec({ cylinder: { wall_heat } }));
const { slots } = honest;
const passage = (role: string): number => honest.engine.passages.findIndex((one) => one.role === role);

/** Takes from one slope a little of another. */
function tampered(victim: number, measure: number): EngineSystem {
  const take = (slopes: Float64Array): void => {
    slopes[victim]! -= LOSS * slopes[measure]!;
  };
  const columns = Int32Array.from(honest.coupledInAngle);
  const [scratch, moved] = [new Float64Array(honest.dimension), new Float64Array(honest.dimension)];
  const own: Pick<EngineSystem, 'angleSlopes' | 'angleJacobian' | 'timeSlopes'> = {
    angleSlopes(angle, y, slopes) {
      honest.angleSlopes(angle, y, slopes);
      take(slopes);
    },
    // Its own, or a stiff step would stumble over the difference before a ledger could.
    angleJacobian(angle, y, slopes, jacobian, drift) {
      const evaluate = (state: Float64Array, out: Float64Array): number => {
        own.angleSlopes(angle, state, out);
        return -1;
      };
      const sizes = y.map((value) => Math.abs(value));
      differenceJacobian({ evaluate, columns, sizes, scratch }, y, slopes, jacobian);
      if (!drift) return;
      own.angleSlopes(angle + 1e-8, y, moved);
      for (let i = 0; i < drift.length; i += 1) drift[i] = (moved[i]! - slopes[i]!) / 1e-8;
    },
    timeSlopes(direction, y, slopes) {
      honest.timeSlopes(direction, y, slopes);
      take(slopes);
    },
  };
  const { engine, dimension, coupledInTime, coupledInAngle, donors } = honest;
  return {
    ...{ engine, slots, dimension, coupledInTime, coupledInAngle, donors },
    // Without a seat, or steps would go by the honest slopes in the kernel.
    ...own,
    timeJacobian: (...asked) => honest.timeJacobian(...asked),
    observe: (y) => honest.observe(y),
    observeAtRest: (y) => honest.observeAtRest(y),
    momentOfInertia: (angle) => honest.momentOfInertia(angle),
    pushedVolume: (angle) => honest.pushedVolume(angle),
  };
}

/** The residuals of one turn from a quick start. */
function residuals(system: EngineSystem): { mass: number; energy: number } {
  return measuredTurn(system, initialState(system, 0, 40)).residuals;
}

it('an honest turn closes', () => {
  const { mass, energy } = residuals(honest);
  expect(mass).toBeLessThan(LIMIT);
  expect(energy).toBeLessThan(LIMIT);
});

describe('mass is missed', () => {
  it.each([
    ['admission', slots.mass(1)],
    ['exhaust', slots.mass(1)],
    ['supply', slots.mass(0)],
  ])('of the %s', (role, victim) => {
    expect(residuals(tampered(victim, slots.passageMass(passage(role)))).mass).toBeGreaterThan(LIMIT);
  });
});

describe('energy is missed', () => {
  it.each([
    ['cylinder', slots.energy(1)],
    ['chest', slots.energy(0)],
  ])('that air brings into the %s', (_volume, victim) => {
    expect(residuals(tampered(victim, slots.enthalpyIn)).energy).toBeGreaterThan(LIMIT);
  });

  it.each(['gasWork', 'bearingWork', 'pistonWork', 'gearWork', 'loadWork', 'wallHeat'] as const)(
    'in the ledger of the %s',
    (name) => {
      expect(residuals(tampered(slots[name], slots[name])).energy).toBeGreaterThan(LIMIT);
    },
  );

  it('in the speed of the flywheel', () => {
    expect(residuals(tampered(SLOT.speed, SLOT.speed)).energy).toBeGreaterThan(LIMIT);
  });
});
