/** One engine from rest to its result: that its parts agree with each other and with what was described. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { flywheels } from '../../../src/parts/flywheels/registry.ts';
import { valveGears } from '../../../src/parts/valve-gears/registry.ts';
import { runEngine } from '../../../src/run/run-engine.ts';
import { settledRunning } from '../../../src/run/settled-running.ts';
import { chosen } from '../../support/chosen.ts';
import { compressorWith } from '../../support/compressors.ts';
import { expectWithin } from '../../support/expect-within.ts';
import {
  constantLoad,
  DEGREE,
  growingLoad,
  inertia,
  pistonLeak,
  referenceSpec,
} from '../../support/reference-engine.ts';

const TURN = 2 * Math.PI;

const ballValve = chosen(valveGears, 'piston-lifted valve', {
  ...{ seat_diameter: 8e-3, valve_diameter: 11e-3, pin_diameter: 3e-3, lift: 4e-3 },
  exhaust: { hole_count: 8, hole_diameter: 6e-3, edge_from_top: 50e-3 },
});

describe('a run that settles', () => {
  const spec = referenceSpec({
    title: 'an engine',
    notes: 'with notes',
    atmosphere: { relative_humidity: 0.6 },
    supply: { rated_pressure: 8e5 },
    cylinder: { wall_thickness: 3e-3, material: 'brass' },
    flywheel: chosen(flywheels, 'disc', { diameter: 0.24, thickness: 0.02, material: 'steel' }),
    compressor: compressorWith({
      ...{ free_air_delivery: 45e-3 / 60, receiver_volume: 24e-3 },
      ...{ cut_in: 6.5e5, cut_out: 9e5 },
    }),
  });
  const engine = buildEngine(spec);
  const run = runEngine(spec);
  const settled = run.settled!;
  const facts = run.engine;

  it('says so, and at which speed', () => {
    expect(run.outcome).toMatchObject({ kind: 'settled' });
    expect(run.outcome.reason).toContain(`${Number(((settled.speed * 60) / TURN).toPrecision(3))} rpm`);
    expect([run.title, run.notes]).toEqual(['an engine', 'with notes']);
    expect(run.standStill).toBeUndefined();
  });

  it('is in a turn that gives back what it takes', () => {
    const { indicated, bearings, piston, valveGear, load, kineticGain } = settled.work;
    expect(Math.abs(kineticGain)).toBeLessThan(1e-4 * indicated);
    expectWithin(bearings + piston + valveGear + load + kineticGain, indicated, 1e-5);
    expect(settled.profile.crankAngle).toHaveLength(361);
  });

  it('shows the way from its start, forwards in time, to where it was spun up for real', () => {
    const { time, crankAngle, speed, chestPressure } = run.trace;
    expect([time[0], crankAngle[0], speed[0]]).toEqual([0, 40 * DEGREE, 0]);
    expectWithin(chestPressure[0]!, 101_325, 1e-9);
    expectWithin(speed.at(-1)!, settled.profile.speed[0]!, 0.02);
    expect(time.at(-1)).toBe(run.outcome.time);
    expect(time.length).toBeGreaterThan(100);
  });

  it('counts its turns, steps and calls, and closes its books', () => {
    const { turns, derivativeCalls, acceptedSteps } = run.counters;
    expect(turns).toBe(Math.floor((run.trace.crankAngle.at(-1)! - 40 * DEGREE) / TURN));
    expect(turns).toBeGreaterThan(5);
    expect(turns).toBeLessThan(300);
    expect(derivativeCalls).toBeGreaterThan(acceptedSteps);
    expect(acceptedSteps).toBeGreaterThan(run.trace.time.length);
    expect(run.ledger.mass).toBeLessThan(1e-9);
    expect(run.ledger.energy).toBeLessThan(1e-6);
  });

  it('is held against its compressor, and tells what water its air brings', () => {
    expectWithin(run.compressor!.demandAnr, settled.airFlowAnr, 1e-9);
    expect(run.moisture!.receiverPressure).toBe(6.5e5);
    expect(run.moisture!.takenIn).toBeGreaterThan(0);
    expect(facts.receiver).toEqual({ volume: 24e-3, pressure: 9e5 });
  });

  it('comes with the facts of its engine', () => {
    const [end] = engine.ends;
    expect(facts).toMatchObject({
      ...{ valveGearKind: 'cam-driven spools', atmosphericPressure: 101_325, atmosphericTemperature: 285.15 },
      ...{ relativeHumidity: 0.6, supplyPressure: 401_325, ratedPressure: 8e5 },
      ...{ bore: 50e-3, stroke: 60e-3, rodLength: 120e-3, sweptVolume: engine.sweptVolume },
      ...{ clearanceVolume: end.clearanceVolume, momentOfInertia: engine.flywheel.momentOfInertia },
      gas: { name: 'dry air', origin: 'room air' },
      barrel: { material: { name: 'brass' }, wallThickness: 3e-3 },
      ends: [{ name: 'cylinder', deadCentre: 0, events: end.valveGear.events }],
      events: end.valveGear.events,
    });
    expectWithin(facts.chestVolume, 60e-6 + (Math.PI * 8e-3 ** 2 * 4) / 4, 1e-9);
    expect(facts.cutOffFraction).toBeCloseTo(0.5, 9);
    expect(facts.flywheelRim).toEqual(engine.flywheel.rim);
    expect(facts.flywheelRim!.radius).toBeCloseTo(0.12, 12);
    expect(facts.derivedSizes).toEqual(end.valveGear.derivedSizes);
    expect(facts.derivedSizes.length).toBeGreaterThan(0);
    for (const absent of ['reverse', 'regulatorInlet']) expect(facts).not.toHaveProperty(absent);
  });

  it('comes with its load up to twice its speed', () => {
    const { speed, torque } = facts.loadCurve;
    expect([speed.length, speed[0], torque.length]).toEqual([61, 0, 61]);
    expect(speed.at(-1)).toBeCloseTo(2 * settled.speed, 9);
    expect(speed[15]).toBeCloseTo(settled.speed / 2, 9);
    for (const i of [0, 15, 60]) expect(torque[i]).toBe(engine.load.torque(speed[i]!));
  });

  it('is what the quick answer says, in fewer turns and calls', () => {
    const quick = settledRunning(spec);
    expectWithin(quick.settled!.speed, settled.speed, 1e-3);
    expectWithin(quick.settled!.airMassFlow, settled.airMassFlow, 2e-3);
    expectWithin(quick.settled!.work.indicated, settled.work.indicated, 2e-3);
    expect(quick.outcome.kind).toBe('settled');
    expect(quick.outcome.time).toBeLessThan(run.outcome.time);
    const { turns, derivativeCalls, acceptedSteps } = quick.counters;
    expect(turns).toBeGreaterThanOrEqual(3);
    expect(turns).toBeLessThanOrEqual(5);
    expect(derivativeCalls).toBeLessThan(run.counters.derivativeCalls / 4);
    expect(acceptedSteps).toBeLessThan(derivativeCalls);
    expect(acceptedSteps).toBeGreaterThan(30 * turns);
  });
});

describe('an engine whose valve is lifted by the piston and falls by itself', () => {
  it('is settled quickly as well, by closer turns alone', () => {
    const spec = referenceSpec({
      ...{ cylinder: { clearance: 0.6 }, supply: { pressure: 6e5 }, valve_gear: ballValve },
      start: { crank_angle: 200 * DEGREE, hand_speed: 50 },
    });
    const quick = settledRunning(spec);
    const { settled } = runEngine(spec);
    expectWithin(quick.settled!.speed, settled!.speed, 1e-3);
    expectWithin(quick.settled!.airMassFlow, settled!.airMassFlow, 2e-3);
    expect(quick.counters.turns).toBeLessThan(25);
  });
});

describe('an engine that settles slower than turns are looked for', () => {
  it('is spun on for real by the quick answer, and its turn measured all the same', () => {
    const { outcome, settled, counters } = settledRunning(
      referenceSpec({
        ...{ load: growingLoad(0, 0.6), flywheel: inertia(200) },
        ...{ start: { hand_speed: 1.5 }, run: { longest_time: 900 } },
      }),
    );
    expect(outcome.kind).toBe('settled');
    expect(settled!.speed).toBeGreaterThan(0.5);
    expect(settled!.speed).toBeLessThan(1);
    const { indicated, bearings, piston, valveGear, load, kineticGain } = settled!.work;
    expect(indicated).toBeGreaterThan(1);
    expectWithin(bearings + piston + valveGear + load + kineticGain, indicated, 1e-5);
    expect(counters.turns).toBe(outcome.turns);
  });
});

describe('a run that does not', () => {
  const hard = referenceSpec({ load: constantLoad(40) });

  it('shows how it stands, and no more', () => {
    const run = runEngine(hard);
    expect(run.outcome.kind).toBe('no-start');
    expect(run.counters.turns).toBe(0);
    for (const absent of ['settled', 'compressor', 'moisture']) expect(run).not.toHaveProperty(absent);
    expectWithin(run.standStill!.chestPressure, 401_325, 1e-3);
    expect(run.standStill!.leaks.length).toBeGreaterThan(0);
    expect(run.engine.loadCurve.speed.at(-1)).toBe(120);
    expect(run.trace.time.at(-1)).toBe(run.outcome.time);
    expect(run.ledger.mass).toBeLessThan(1e-9);
  });

  it('is told by the quick answer as well, without a turn', () => {
    const { outcome, settled, counters } = settledRunning(hard);
    expect(outcome.kind).toBe('no-start');
    expect(settled).toBeUndefined();
    expect(counters.turns).toBe(0);
    expect(counters.derivativeCalls).toBeGreaterThan(0);
  });

  it('because it stalls again is followed for real by the quick answer', () => {
    const spec = referenceSpec({
      load: constantLoad(3),
      start: { crank_angle: 350 * DEGREE, hand_speed: 30 },
    });
    const { outcome, counters } = settledRunning(spec);
    expect(outcome.kind).toBe('stalled');
    expect(counters.turns).toBe(outcome.turns);
    expect(counters.turns).toBe(1);
  });

  it('may have been held against no compressor', () => {
    const compressor = compressorWith({
      ...{ free_air_delivery: 1e-3, receiver_volume: 24e-3, cut_in: 6.5e5, cut_out: 9e5 },
    });
    const run = runEngine({ ...hard, compressor });
    expect(run).not.toHaveProperty('compressor');
    expect(run.engine.receiver).toEqual({ volume: 24e-3, pressure: 9e5 });
  });
});

describe('the facts of an engine', () => {
  const regulator = {
    ...{ inlet_pressure: 801_325, sonic_conductance: 2e-8, critical_pressure_ratio: 0.3, droop: 0.5e5 },
  };
  const spec = referenceSpec({
    cylinder: { action: 'double', piston_rod_diameter: 12e-3, cylinders: 2, crank_spacing: 90 * DEGREE },
    leaks: [pistonLeak(12e-6)],
    supply: { regulator },
    running_direction: 'reverse',
    load: constantLoad(90),
    run: { longest_time: 0.1 },
  });
  const { engine: facts } = runEngine(spec);

  it('with two double-acting cylinders name the sizes of either end of the first, and add up all volumes', () => {
    const { ends, volumes } = buildEngine(spec);
    const given = ends.map(({ name, deadCentre, valveGear }) => ({
      name,
      deadCentre,
      events: valveGear.events,
    }));
    expect(facts.ends).toEqual(given);
    expect(facts.ends).toHaveLength(4);
    const labels = facts.derivedSizes.map(({ label }) => label);
    const [cover, crank] = ['cover end: ', 'crank end: '].map((side) =>
      labels.filter((label) => label.startsWith(side)),
    );
    expect(cover!.length).toBeGreaterThan(0);
    expect(cover).toHaveLength(ends[0].valveGear.derivedSizes.length);
    expect(crank).toHaveLength(cover!.length);
    const clearances = ends.map(({ clearanceVolume }) => clearanceVolume);
    expect(facts.clearanceVolume).toBeCloseTo(
      clearances[0]! + clearances[1]! + clearances[2]! + clearances[3]!,
      12,
    );
    // Hose and chest are two volumes behind a regulator.
    expect(facts.chestVolume).toBe(volumes[0]!.fixedVolume! + volumes[1]!.fixedVolume!);
  });

  it('say what stands in front of a regulator, and which way it is to run', () => {
    expect(facts.regulatorInlet).toBe(801_325);
    expect(facts.reverse).toEqual({ gearServes: false });
    expect(facts).not.toHaveProperty('receiver');
    expect(facts).not.toHaveProperty('flywheelRim');
    expect(facts.barrel).toEqual({ material: undefined, wallThickness: undefined });
  });
});
