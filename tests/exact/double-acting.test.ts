/**
 * A double-acting cylinder in the model: forces on both sides of the piston and on the rod, leaks from end to end and out
 * of the gland, events of each end by the share of its own stroke, and work as the sum of two diagrams.
 */
import { describe, expect, it } from 'vitest';
import { ATMOSPHERE, FIRST_VOLUME } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { pistonTravel, pistonTravelRate } from '../../src/parts/crank-train.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { engineStepper } from '../../src/run/stepper.ts';
import { chosen } from '../support/chosen.ts';
import { measuredTurn, stateAfterTurns, systemOf } from '../support/drive.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, idealEngine } from '../support/ideal-engine.ts';
import { inertia, pistonLeak, referenceSpec, spoolGear } from '../support/reference-engine.ts';

const ROOM = 101_325;
const doubleActing = { action: 'double', piston_rod_diameter: 0.012 } as const;
const glandLeak = chosen(leaks, 'rod gland', { clearance: { by: 'gap', gap: 20e-6 }, length: 15e-3 });

describe('the torque of the air', () => {
  const system = systemOf(referenceSpec({ cylinder: doubleActing }));
  const { engine, slots } = system;
  const [cover, crank] = engine.ends as [(typeof engine.ends)[0], (typeof engine.ends)[0]];

  it('is that of the gauge pressures on the whole piston and on the piston less its rod', () => {
    for (const angle of [0.7, 2, 4, 5.5]) {
      const y = initialState(system, angle, 0);
      for (const [{ place }, factor] of [
        [cover, 4],
        [crank, 2.5],
      ] as const) {
        y[slots.mass(place - FIRST_VOLUME)]! *= factor;
        y[slots.energy(place - FIRST_VOLUME)]! *= factor;
      }
      const lever = pistonTravelRate(engine.crank, Math.sin(angle), Math.cos(angle));
      const piston = (Math.PI * 0.05 ** 2) / 4;
      const annulus = piston - (Math.PI * 0.012 ** 2) / 4;
      expectWithin(system.observe(y).gasTorque, (3 * ROOM * piston - 1.5 * ROOM * annulus) * lever, 1e-9);
    }
  });
});

describe('an event at half the stroke', () => {
  const { engine } = systemOf(
    referenceSpec({ cylinder: doubleActing, valve_gear: spoolGear({ cutOff: 0.5 }) }),
  );

  it('finds the piston half-way for either end', () => {
    for (const { valveGear, deadCentre } of engine.ends) {
      const angle = valveGear.events.cutOff + deadCentre;
      expect(pistonTravel(engine.crank, Math.sin(angle), Math.cos(angle))).toBeCloseTo(0.03, 9);
    }
  });

  it('comes later after dead centre at the crank end, for the rod leans the other way', () => {
    const [cover, crank] = engine.ends.map(({ valveGear }) => valveGear.events.cutOff);
    expect(cover).toBeLessThan(Math.PI / 2);
    expect(crank).toBeCloseTo(Math.PI - cover!, 9);
  });

  it('is an edge of the engine where the crank then stands', () => {
    for (const { valveGear, deadCentre } of engine.ends) {
      const angle = (valveGear.events.cutOff + deadCentre) % (2 * Math.PI);
      expect(engine.edges.some((edge) => Math.abs(edge - angle) < 1e-9)).toBe(true);
    }
  });
});

describe('the leaks of a double-acting cylinder', () => {
  const spec = referenceSpec({ cylinder: doubleActing, leaks: [pistonLeak(20e-6), glandLeak] });
  const { engine } = systemOf(spec);
  const [cover, crank] = engine.ends.map(({ place }) => place);
  const named = (name: string) => engine.passages.filter((passage) => passage.name === name);

  it('past the piston lead from the cover end to the crank end, once', () => {
    expect(named('past the piston')).toMatchObject([{ from: cover, to: crank }]);
  });

  it('along the rod lead from the crank end to the room, once', () => {
    expect(named('along the piston rod')).toMatchObject([{ from: crank, to: ATMOSPHERE }]);
  });

  it('a single-acting piston leaks to the room', () => {
    const single = systemOf(referenceSpec()).engine;
    expect(single.passages.find(({ name }) => name === 'past the piston')!.to).toBe(ATMOSPHERE);
  });

  it('carry air to the other side of the piston until both pressures are one', () => {
    const closed = idealEngine({
      leaks: [pistonLeak(50e-6)],
      cylinder: doubleActing,
      start: { crank_angle: 1 },
    });
    const { system, y } = atStart(closed);
    const { slots } = system;
    const massOf = (i: number): number => y[slots.mass(i)]!;
    y[slots.mass(1)]! *= 5;
    y[slots.energy(1)]! *= 5;
    const before = massOf(1) + massOf(2);
    expect(engineStepper(system).inTime(0, y, 60, { stepLimit: 10_000 }).reason).toBe('end');
    const { pressure } = system.observe(y);
    expectWithin(pressure[system.engine.ends[0].place]!, pressure[system.engine.ends[1]!.place]!, 1e-3);
    expectWithin(massOf(1) + massOf(2), before, 1e-12);
  });
});

describe('a turn of a double-acting engine', () => {
  const leaky = [pistonLeak(12e-6), glandLeak];
  const spec = referenceSpec({ cylinder: doubleActing, leaks: leaky, flywheel: inertia(1000) });
  const system = systemOf(spec);
  const turn = measuredTurn(system, stateAfterTurns(system, 30, 4));

  it('closes its ledgers', () => {
    expect(turn.residuals.mass).toBeLessThan(1e-6);
    expect(turn.residuals.energy).toBeLessThan(1e-6);
  });

  it('does the work of both diagrams', () => {
    const area = turn.profile.ends.reduce((sum, { volume, pressure }) => {
      const strips = volume
        .subarray(1)
        .map((v, i) => ((pressure[i]! + pressure[i + 1]!) / 2) * (v - volume[i]!));
      return sum + strips.reduce((a, b) => a + b, 0);
    }, 0);
    // A corner of the diagram between two degrees is cut.
    expectWithin(turn.after[system.slots.gasWork]!, area, 1e-3);
  });

  it('does as much with each bit of volume at either end, but for the lean of the rod', () => {
    const perVolume = turn.profile.ends.map(({ volume, pressure, sweptVolume }) => {
      const strips = volume.subarray(1).map((v, i) => pressure[i]! * (v - volume[i]!));
      return strips.reduce((a, b) => a + b, 0) / sweptVolume;
    });
    // The piston is slower about bottom dead centre, so that the crank end fills better.
    expect(perVolume[1]! / perVolume[0]!).toBeGreaterThan(1);
    expect(perVolume[1]! / perVolume[0]!).toBeLessThan(1.2);
  });

  it('counts as lost what slips past the piston and straight out of the other end, no more than slips', () => {
    const passage = system.engine.passages.findIndex(({ name }) => name === 'past the piston');
    const slipping = turn.profile.massFlow[passage]!.subarray(1).map(Math.abs);
    const slipped = (slipping.reduce((a, b) => a + b, 0) / 360) * ((2 * Math.PI) / 30);
    const lost = turn.after[system.slots.passageWaste(passage)]!;
    expect(lost).toBeGreaterThan(0.3 * slipped);
    expect(lost).toBeLessThan(slipped);
  });
});
