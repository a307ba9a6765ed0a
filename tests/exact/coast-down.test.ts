/**
 * A flywheel spun by hand and left to itself, ports wide open to the room and no air on: coming to rest under dry and
 * viscous friction. From J ω̇ = −(T + c ω):
 *
 *   time to rest    t = (J/c) ln(1 + c ω₀/T)                    dry friction alone: J ω₀/T
 *   angle to rest   φ = (J/c) (ω₀ − (T/c) ln(1 + c ω₀/T))       dry friction alone: J ω₀²/(2 T)
 *
 * The engine turns in crank angle first and in time at last, so both ways of moving and the event of rest are checked.
 */
import { describe, expect, it } from 'vitest';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import type { RunResult } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { expectWithin } from '../support/expect-within.ts';
import { idealEngine, idealGear, NO_FRICTION } from '../support/ideal-engine.ts';

const J = 1e-3;
const START_SPEED = 20 * Math.PI;
const DRY = 0.02;

interface Friction {
  readonly viscous: number;
  readonly startAngle?: number;
}

/** So slender a cylinder that its air takes less than a part in ten thousand of the friction. */
function coast({ viscous, startAngle = 0 }: Friction): RunResult {
  return runEngine(
    idealEngine({
      cylinder: { bore: 5e-4, stroke: 2e-3, rod_length: 4e-3, clearance: 2 },
      flywheel: givenFlywheel.choose({ moment_of_inertia: J }),
      friction: { ...NO_FRICTION, running_torque: DRY, breakaway_torque: DRY, viscous_torque: viscous },
      valve_gear: idealGear({ area: () => 2e-10, exhaust: 'always' }),
      start: { crank_angle: startAngle, hand_speed: START_SPEED },
    }),
  );
}

function restOf({ trace }: RunResult): { readonly time: number; readonly angle: number } {
  const i = trace.speed.findIndex((speed) => speed < 1e-6);
  return { time: trace.time[i]!, angle: trace.crankAngle[i]! };
}

describe('600 rpm, 1e-3 kg m², 0.02 N m', () => {
  it('dry friction alone: at rest after 3.142 s and 15.7 turns', () => {
    const result = coast({ viscous: 0 });
    const rest = restOf(result);
    expect(result.outcome.kind).toBe('stalled');
    expect(result.outcome.turns).toBe(15);
    expectWithin(rest.time, (J * START_SPEED) / DRY, 1e-4);
    expectWithin(rest.angle, (J * START_SPEED ** 2) / (2 * DRY), 1e-4);
    expect(rest.time).toBeCloseTo(3.142, 3);
    expect(rest.angle / (2 * Math.PI)).toBeCloseTo(15.7, 1);
  });

  it('and 1e-4 N m s of viscous friction: 2.732 s', () => {
    const c = 1e-4;
    const logarithm = Math.log(1 + (c * START_SPEED) / DRY);
    const rest = restOf(coast({ viscous: c }));
    expectWithin(rest.time, (J / c) * logarithm, 1e-4);
    expectWithin(rest.angle, (J / c) * (START_SPEED - (DRY / c) * logarithm), 1e-4);
    expect(rest.time).toBeCloseTo(2.732, 3);
  });

  it('stops as far on from wherever it starts, also from behind the turn', () => {
    const from = restOf(coast({ viscous: 0, startAngle: -5 })).angle + 5;
    expectWithin(from, (J * START_SPEED ** 2) / (2 * DRY), 1e-4);
  });

  it('closes its ledgers', () => {
    expect(coast({ viscous: 1e-4 }).ledger.energy).toBeLessThan(1e-6);
  });
});
