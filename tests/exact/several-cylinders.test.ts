/**
 * Several equal cylinders on one shaft, from an endless chest at one imposed speed: each does as it would alone, only
 * later in the turn. So n of them take n times the air and do n times the work, and together they push more evenly.
 */
import { describe, expect, it } from 'vitest';
import { angleAtStrokeFraction } from '../../src/parts/crank-train.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { MeasuredCycle } from '../../src/run/cycle.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, idealEngine, idealGear, oneTurn } from '../support/ideal-engine.ts';

const crank = { crankRadius: 0.03, rodLength: 0.12 };

const specOf = (cylinder: Partial<EngineSpec['cylinder']>): EngineSpec =>
  idealEngine({
    cylinder: { clearance: 0.1, ...cylinder },
    supply: { pressure: 4e5 },
    valve_gear: idealGear({
      area: () => 40e-6,
      admission: { opens: 0, closes: angleAtStrokeFraction(crank, 0.4) },
      exhaust: { opens: Math.PI, closes: 6 },
    }),
    start: { hand_speed: 20 },
  });

interface Turn {
  readonly system: EngineSystem;
  readonly cycle: MeasuredCycle;
}

/** The fourth turn from rest of the gas: the first three leave a part in a million of how it began. */
function turnOf(cylinder: Partial<EngineSpec['cylinder']>): Turn {
  const { system, y } = atStart(specOf(cylinder));
  let cycle = oneTurn(system, y);
  for (let i = 0; i < 3; i += 1) cycle = oneTurn(system, cycle.after);
  return { system, cycle };
}

const airOf = ({ system, cycle }: Turn): number =>
  system.engine.ends.reduce((sum, { admissionPassage }) => sum + cycle.passageMass[admissionPassage]!, 0);
const workOf = ({ system, cycle }: Turn): number => cycle.after[system.slots.gasWork]!;

/** Largest swing of the energy left over by an even load, as a share of the work of the turn. */
function unevenness({ cycle }: Turn): number {
  const { gasTorque } = cycle.profile;
  const mean = gasTorque.subarray(1).reduce((a, b) => a + b, 0) / 360;
  let [energy, low, high] = [0, 0, 0];
  for (const torque of gasTorque.subarray(1)) {
    energy += torque - mean;
    [low, high] = [Math.min(low, energy), Math.max(high, energy)];
  }
  return (high - low) / (360 * mean);
}

const one = turnOf({});

describe.each([2, 3, 4, 5, 6])('%i cylinders', (cylinders) => {
  const several = turnOf({ cylinders });

  it('take that many times the air of one', () => {
    expectWithin(airOf(several), cylinders * airOf(one), 2e-6);
  });

  it('do that many times the work of one', () => {
    expectWithin(workOf(several), cylinders * workOf(one), 2e-6);
  });

  it('each do the same', () => {
    const { ends } = several.system.engine;
    const each = ends.map(({ admissionPassage }) => several.cycle.passageMass[admissionPassage]!);
    for (const air of each) expectWithin(air, each[0]!, 2e-6);
  });

  it('go through the turn one behind the other', () => {
    const step = 360 / cylinders;
    const [first, second] = several.cycle.profile.ends;
    for (const degree of [0, 30, 100, 170])
      if (Number.isInteger(step))
        expectWithin(second!.volume[(degree + step) % 360]!, first.volume[degree]!, 1e-12);
    expect(second!.deadCentre).toBeCloseTo((2 * Math.PI) / cylinders, 12);
  });

  it('push more evenly than one', () => {
    expect(unevenness(several)).toBeLessThan(0.8 * unevenness(one));
  });
});

describe('two cylinders', () => {
  it('side by side are one of twice the area', () => {
    const twin = turnOf({ cylinders: 2, crank_spacing: 0 });
    const alone = one.cycle.profile.gasTorque;
    // Between the integrator's steps, that is: by its interpolation.
    const peak = Math.max(...alone);
    for (const [i, torque] of twin.cycle.profile.gasTorque.entries())
      expect(Math.abs(torque - 2 * alone[i]!)).toBeLessThan(5e-5 * peak);
    expectWithin(unevenness(twin), unevenness(one), 1e-5);
  });

  it('opposite each other push twice as evenly, three more so', () => {
    const [two, three] = [turnOf({ cylinders: 2 }), turnOf({ cylinders: 3 })];
    expect(unevenness(two)).toBeLessThan(0.6 * unevenness(one));
    expect(unevenness(three)).toBeLessThan(0.7 * unevenness(two));
  });

  it('a full turn apart are side by side again', () => {
    const twin = turnOf({ cylinders: 2, crank_spacing: 2 * Math.PI });
    expectWithin(airOf(twin), 2 * airOf(one), 2e-6);
  });
});
