/** What has to be found for a turn that repeats itself: errors, steps and learning, by hand on an engine that never runs. */
import { beforeEach, describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../../src/model/engine.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { strokeFraction } from '../../../src/parts/crank-train.ts';
import { turnUnknowns } from '../../../src/run/turn-unknowns.ts';
import { systemOf } from '../../support/drive.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec());
const { engine, slots } = system;
const [{ place, clearanceVolume, sweptVolume, valveGear }] = engine.ends;
const CHEST = engine.chest - FIRST_VOLUME;
const END = place - FIRST_VOLUME;
const MOMENT = system.momentOfInertia(0);

let y = initialState(system, 0, 30);
beforeEach(() => {
  y = initialState(system, 0, 30);
});

/** A turn that multiplies speed, and energy and temperature of each volume. */
function turned(speed: number, gas: readonly { readonly energy: number; readonly temperature: number }[]) {
  const after = y.slice();
  after[SLOT.speed]! *= speed;
  for (const [i, { energy, temperature }] of gas.entries()) {
    after[slots.energy(i)]! *= energy;
    after[slots.mass(i)]! *= energy / temperature;
  }
  return after;
}

const SAME = { energy: 1, temperature: 1 };
const temperatureOf = (volume: number): number => y[slots.energy(volume)]! / y[slots.mass(volume)]!;

/** 1/(1 − e⁻ʳ), r being γ times the air up to cut-off, at the density of the chest, over the air of the chest. */
const chestFactor = (): number => {
  const filled = clearanceVolume + sweptVolume * strokeFraction(engine.crank, valveGear.events.cutOff);
  return 1 / (1 - Math.exp((-filled * engine.gas.heatCapacityRatio) / engine.volumes[CHEST]!.fixedVolume!));
};

describe('errors', () => {
  it('of the speed are the gain of kinetic energy over its slope', () => {
    const unknowns = turnUnknowns(system, y, 4);
    unknowns.look(turned(1.1, []));
    const error = (0.5 * MOMENT * 30 ** 2 * (1.1 ** 2 - 1)) / 4;
    expect(unknowns.isWithin({ speed: 1.001 * error, gas: 1e-12 })).toBe(true);
    expect(unknowns.isWithin({ speed: 0.999 * error, gas: 1e-12 })).toBe(false);
  });

  it.each([
    ['energy of the chest', [{ energy: 0.99, temperature: 1 }], 0.01],
    ['energy of the cylinder', [SAME, { energy: 1.02, temperature: 1 }], 0.02],
    ['temperature of the cylinder', [SAME, { energy: 1, temperature: 1.03 }], 0.03],
    ['temperature of the chest', [{ energy: 1, temperature: 0.99 }], 0.01 * chestFactor()],
  ])('of the %s are shares of what it is', (_name, gas, error) => {
    const unknowns = turnUnknowns(system, y, 4);
    unknowns.look(turned(1, gas));
    expect(unknowns.isWithin({ speed: 1e-12, gas: 1.001 * error })).toBe(true);
    expect(unknowns.isWithin({ speed: 1e-12, gas: 0.999 * error })).toBe(false);
  });

  it('count as small only below what is allowed', () => {
    const unknowns = turnUnknowns(system, y, 4);
    unknowns.look(y);
    expect(unknowns.isWithin({ speed: 1e-15, gas: 1e-15 })).toBe(true);
    expect(unknowns.isWithin({ speed: 0, gas: 1 })).toBe(false);
  });

  it('of the speed are none where it is no unknown', () => {
    const unknowns = turnUnknowns(system, y);
    unknowns.look(turned(2, []));
    expect(unknowns.isWithin({ speed: 0, gas: 1e-12 })).toBe(true);
  });
});

describe('the first step', () => {
  it('takes the gas to where the turn left it; what the chest mends by little, it takes the whole way', () => {
    const unknowns = turnUnknowns(system, y);
    const end = { energy: 1.02, temperature: 0.97 };
    const after = turned(1, [{ energy: 1.01, temperature: 1.004 }, end]);
    const [chestBefore, endBefore] = [temperatureOf(CHEST), temperatureOf(END)];
    unknowns.look(after);
    unknowns.step();
    expectWithin(y[slots.energy(CHEST)]!, after[slots.energy(CHEST)]!, 1e-12);
    expectWithin(y[slots.energy(END)]!, after[slots.energy(END)]!, 1e-12);
    expectWithin(temperatureOf(END), endBefore * 0.97, 1e-12);
    expectWithin(temperatureOf(CHEST), chestBefore * (1 + 0.004 * chestFactor()), 1e-12);
    expect(chestFactor()).toBeGreaterThan(1.1);
    expect(y[SLOT.speed]).toBe(30);
  });

  it('takes the logarithm of the speed as far as its gain over the slope', () => {
    const unknowns = turnUnknowns(system, y, 40);
    unknowns.look(turned(1.02, []));
    unknowns.step();
    expectWithin(y[SLOT.speed]! / 30, Math.exp((0.5 * MOMENT * 30 ** 2 * (1.02 ** 2 - 1)) / 40), 1e-12);
  });

  it('of any unknown is no longer than three tenths, and shortens the others alike', () => {
    const unknowns = turnUnknowns(system, y);
    const energies = [y[slots.energy(CHEST)]!, y[slots.energy(END)]!];
    unknowns.look(
      turned(1, [
        { energy: 1.1, temperature: 1 },
        { energy: 1.6, temperature: 1 },
      ]),
    );
    unknowns.step();
    expectWithin(y[slots.energy(END)]! / energies[1]!, 1.3, 1e-12);
    expectWithin(y[slots.energy(CHEST)]! / energies[0]!, 1.05, 1e-12);
  });

  it('counts the longest whichever way it goes', () => {
    const unknowns = turnUnknowns(system, y);
    const energy = y[slots.energy(END)]!;
    unknowns.look(
      turned(1, [
        { energy: 1.1, temperature: 1 },
        { energy: 0.4, temperature: 1 },
      ]),
    );
    unknowns.step();
    expectWithin(y[slots.energy(END)]! / energy, 0.7, 1e-12);
  });
});

describe('the steps of the speed', () => {
  /** How far the logarithm of the speed is sent at the second step, in units of its error then. */
  function secondStep(firstError: number, secondError: number): number {
    const unknowns = turnUnknowns(system, y, 1);
    const lookAt = (error: number): void => {
      const after = y.slice();
      after[SLOT.speed] = Math.sqrt(y[SLOT.speed]! ** 2 + (2 * error) / MOMENT);
      unknowns.look(after);
    };
    lookAt(firstError);
    unknowns.step();
    const speed = y[SLOT.speed]!;
    lookAt(secondError);
    unknowns.step();
    return Math.log(y[SLOT.speed]! / speed) / secondError;
  }

  it('follow what was learnt: an error that halved takes twice as far', () => {
    expect(secondStep(0.02, 0.01)).toBeCloseTo(2, 6);
    expect(secondStep(-0.02, -0.01)).toBeCloseTo(2, 6);
  });

  it('go at most three times as far as the error says, and at least a third', () => {
    expect(secondStep(0.02, 0.018)).toBeCloseTo(3, 6);
    expect(secondStep(-0.02, -0.018)).toBeCloseTo(3, 6);
    expect(secondStep(0.02, -0.18)).toBeCloseTo(1 / 3, 6);
  });

  it('go the way of the error, even where an error grew', () => {
    expect(secondStep(0.02, 0.05)).toBeCloseTo(1 / 3, 6);
    expect(secondStep(-0.02, -0.05)).toBeCloseTo(1 / 3, 6);
  });
});

describe('learning', () => {
  /** Energy of the cylinder goes half its way to twice the room's in every turn. */
  function turn(): Float64Array {
    const after = y.slice();
    const gap = 2 * initialState(system, 0, 30)[slots.energy(END)]! - y[slots.energy(END)]!;
    after[slots.energy(END)]! += 0.5 * gap;
    after[slots.mass(END)]! *= after[slots.energy(END)]! / y[slots.energy(END)]!;
    return after;
  }

  it('finds a turn that repeats itself in few steps', () => {
    const unknowns = turnUnknowns(system, y);
    unknowns.look(turn());
    let steps = 0;
    for (; steps < 12 && !unknowns.isWithin({ speed: 1, gas: 1e-9 }); steps += 1) {
      unknowns.step();
      unknowns.look(turn());
    }
    expect(steps).toBeLessThan(9);
    expectWithin(y[slots.energy(END)]!, 2 * initialState(system, 0, 30)[slots.energy(END)]!, 1e-8);
  });

  it('leaves out the step before a new beginning', () => {
    const unknowns = turnUnknowns(system, y);
    unknowns.look(turned(1, [SAME, { energy: 1.04, temperature: 1 }]));
    unknowns.step();
    unknowns.startAgain();
    unknowns.look(turned(1, [SAME, { energy: 1.02, temperature: 1 }]));
    const energy = y[slots.energy(END)]!;
    unknowns.step();
    expectWithin(y[slots.energy(END)]! / energy, 1.02, 1e-12);
  });

  it('learns nothing from a second look at the same step', () => {
    const unknowns = turnUnknowns(system, y);
    unknowns.look(turned(1, [SAME, { energy: 1.04, temperature: 1 }]));
    unknowns.step();
    unknowns.look(turned(1, [SAME, { energy: 1.02, temperature: 1 }]));
    unknowns.look(turned(1, [SAME, { energy: 1.01, temperature: 1 }]));
    const energy = y[slots.energy(END)]!;
    unknowns.step();
    // Learnt from the first look: the error halves at a whole step.
    expectWithin(y[slots.energy(END)]! / energy, 1 + 2 * 0.01, 1e-9);
  });
});
