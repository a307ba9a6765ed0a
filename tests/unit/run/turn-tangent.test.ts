/** What one turn tells of the turn that repeats itself, against turns that were run. */
import { describe, expect, it } from 'vitest';
import { ledgerResiduals } from '../../../src/model/ledger.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { measureTurn, type MeasuredTurn } from '../../../src/run/measured-turn.ts';
import { levelOf, settleByRoot } from '../../../src/run/settled-root.ts';
import { engineStepper, FINE, QUICK } from '../../../src/run/stepper.ts';
import { TangentTurns } from '../../../src/run/tangent-turns.ts';
import { systemOf } from '../../support/drive.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { constantLoad, pistonLeak, referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec({ load: constantLoad(1), leaks: [pistonLeak(20e-6)] }));
const { slots, engine } = system;

function measured(turn: MeasuredTurn | { readonly reason: string } | undefined): MeasuredTurn {
  if (turn === undefined || 'reason' in turn) throw new Error(turn?.reason ?? 'no root');
  return turn;
}

/** Settled running, closely. */
const settled = initialState(system, 0, 40);
const levels = [
  levelOf(engineStepper(system, QUICK), { speed: 1e-2, gas: 4e-2, enough: false }),
  levelOf(engineStepper(system, FINE), { speed: 1e-5, gas: 1e-4, enough: true }),
] as const;
if (settleByRoot(system, settled, levels, 5).kind !== 'settled') throw new Error('it does not settle');
const exact = measured(measureTurn(system, engineStepper(system, FINE), settled));

/** Some way off: the speed, and the air in the cylinder. */
function off(speed: number, air: number): Float64Array {
  const y = settled.slice();
  const volume = engine.ends[0].place - 2;
  y[SLOT.speed]! *= 1 + speed;
  y[slots.mass(volume)]! *= 1 + air;
  y[slots.energy(volume)]! *= 1 + air;
  return y;
}

describe('a turn near the root', () => {
  const turns = new TangentTurns(system, engineStepper(system, QUICK));
  const told = measured(turns.turnAtRoot(off(0.012, -0.02), { speed: 2e-2, gas: 5e-2 }));

  it('tells it alone', () => {
    expect(turns.turns).toBe(1);
    expect(turns.counters.derivativeCalls).toBeGreaterThan(8 * turns.counters.acceptedSteps);
  });

  it('where it begins and how long it takes', () => {
    expectWithin(told.before[SLOT.speed]!, settled[SLOT.speed]!, 1e-3);
    const period = ({ before, after }: MeasuredTurn): number => after[SLOT.time]! - before[SLOT.time]!;
    expectWithin(period(told), period(exact), 5e-4);
    expect(told.after[SLOT.crankAngle]! - told.before[SLOT.crankAngle]!).toBeCloseTo(2 * Math.PI, 12);
  });

  it('gives back what it takes, and its books close', () => {
    expectWithin(told.after[SLOT.speed]!, told.before[SLOT.speed]!, 1e-4);
    for (const i of engine.volumes.keys())
      for (const slot of [slots.mass(i), slots.energy(i)])
        expectWithin(told.after[slot]!, told.before[slot]!, 2e-3);
    const { mass, energy } = ledgerResiduals(system, told.before, told.after, 0);
    expect(mass).toBeLessThan(1e-6);
    expect(energy).toBeLessThan(1e-3);
  });

  it('its works, its air, and the air in the cylinder as the valve opens and shuts', () => {
    for (const slot of [slots.gasWork, slots.loadWork, slots.pistonWork])
      expectWithin(told.after[slot]!, exact.after[slot]!, 1e-3);
    expectWithin(told.passageMass[0]!, exact.passageMass[0]!, 1e-3);
    expect(told.passageMass).toEqual(engine.passages.map((_, i) => told.after[slots.passageMass(i)]));
    const [one, other] = [told.ends[0]!, exact.ends[0]!];
    for (const event of ['atAdmission', 'atCutOff'] as const)
      expectWithin(one[event].mass, other[event].mass, 4e-3);
  });
});

describe('a turn further off', () => {
  it('leads on to one that is near', () => {
    const turns = new TangentTurns(system, engineStepper(system, QUICK));
    const told = measured(turns.turnAtRoot(off(0.2, 0.3), { speed: 2e-3, gas: 1e-2 }));
    expect(turns.turns).toBeGreaterThan(1);
    expect(turns.turns).toBeLessThanOrEqual(4);
    expectWithin(told.before[SLOT.speed]!, settled[SLOT.speed]!, 1e-3);
  });

  it('that gets nowhere near in eight turns tells nothing', () => {
    const turns = new TangentTurns(system, engineStepper(system, QUICK));
    expect(turns.turnAtRoot(off(0.01, 0), { speed: 0, gas: 0 })).toBeUndefined();
    expect(turns.turns).toBe(8);
  });

  it('that cannot be finished says why', () => {
    const y = initialState(system, 0, 0.1);
    const turns = new TangentTurns(system, engineStepper(system, QUICK));
    expect(turns.turnAtRoot(y, { speed: 1, gas: 1 })).toEqual({ reason: 'slow' });
  });
});
