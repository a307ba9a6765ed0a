/**
 * The measure of one turn of two double-acting cylinders at a right angle, upright: what its totals say, its samples at every degree
 * must say as well, and what hangs on the angle alone is known beforehand.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import type { WorkingEnd } from '../../../src/model/engine.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { pistonTravel } from '../../../src/parts/crank-train.ts';
import { measureCycle, type MeasuredCycle } from '../../../src/run/cycle.ts';
import { settledCycle } from '../../../src/run/settled-cycle.ts';
import { engineStepper, QUICK } from '../../../src/run/stepper.ts';
import { systemOf } from '../../support/drive.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { holeLeak, pistonLeak, referenceSpec } from '../../support/reference-engine.ts';
import { stepperByLaw } from '../../support/stepper-by-law.ts';

const TURN = 2 * Math.PI;
const DEGREE = Math.PI / 180;
const system = systemOf(
  referenceSpec({
    cylinder: {
      ...{ action: 'double', piston_rod_diameter: 12e-3, attitude: 'upright' },
      ...{ cylinders: 2, crank_spacing: 90 * DEGREE },
    },
    leaks: [pistonLeak(20e-6), holeLeak('chest to room', 0.8e-3)],
  }),
);
const { engine, slots } = system;

/** Three turns on, seven seconds on, air in the chest, and totals from before. */
function beginning(): Float64Array {
  const y = initialState(system, 3 * TURN, 40);
  y[SLOT.time] = 7;
  for (const slot of [slots.mass(0), slots.energy(0)])
    y[slot]! *= engine.supply.pressure / engine.atmosphere.pressure;
  y.fill(5, slots.firstTotal);
  return y;
}

const start = beginning();
let cycle: MeasuredCycle;
// Each test measures for itself, so that it shows alone what it notices.
beforeEach(() => {
  const turn = measureCycle(system, engineStepper(system, QUICK), start);
  if ('reason' in turn) throw new Error(turn.reason);
  cycle = turn;
});

/** Of a column over an abscissa, by the trapezoidal rule. */
const integral = (column: ArrayLike<number>, over: ArrayLike<number>): number =>
  Array.from(
    { length: over.length - 1 },
    (_, i) => ((column[i]! + column[i + 1]!) / 2) * (over[i + 1]! - over[i]!),
  ).reduce((sum, part) => sum + part, 0);

/** The volume of an end at a crank angle. */
function volumeAt({ side, deadCentre, clearanceVolume, sweptVolume, area }: WorkingEnd, at: number): number {
  const angle = at - deadCentre + (side === 'cover' ? 0 : Math.PI);
  const way = pistonTravel(engine.crank, Math.sin(angle), Math.cos(angle));
  return clearanceVolume + (side === 'cover' ? area * way : sweptVolume - area * way);
}

describe('a measured turn', () => {
  it('begins where it was told to, its totals at zero, and leaves that state alone', () => {
    expect(start).toEqual(beginning());
    expect(cycle.before.slice(0, slots.firstTotal)).toEqual(start.slice(0, slots.firstTotal));
    expect(cycle.before.slice(slots.firstTotal).every((total) => total === 0)).toBe(true);
    expect(cycle.after[SLOT.crankAngle]).toBe(4 * TURN);
  });

  it('says what went through each passage, and that nothing is lost', () => {
    expect(cycle.passageMass).toEqual(engine.passages.map((_, i) => cycle.after[slots.passageMass(i)]));
    expect(cycle.residuals.mass).toBeLessThan(1e-9);
    expect(cycle.residuals.energy).toBeLessThan(1e-6);
  });

  it('knows each end as its admission opens and as it shuts, wherever its dead centre is', () => {
    for (const [k, end] of engine.ends.entries()) {
      const { admission, cutOff } = end.valveGear.events;
      const { atAdmission, atCutOff } = cycle.ends[k]!;
      expectWithin(atAdmission.volume, volumeAt(end, admission + end.deadCentre), 1e-9);
      expectWithin(atCutOff.volume, volumeAt(end, cutOff + end.deadCentre), 1e-9);
      // By p V = m R T at the degree next to it.
      const { pressure, temperature } = cycle.profile.ends[k]!;
      for (const [event, { mass, volume }] of [
        [admission, atAdmission],
        [cutOff, atCutOff],
      ] as const) {
        const i = Math.round((((event + end.deadCentre) / DEGREE) % 360) + 360) % 360;
        const expected = (pressure[i]! * volume) / (engine.gas.specificGasConstant * temperature[i]!);
        expectWithin(mass, expected, 0.08);
      }
    }
  });

  it('that does not get round says why', () => {
    expect(measureCycle(system, stepperByLaw({}).stepper, initialState(system, 0, 0.3))).toEqual({
      reason: 'slow',
    });
  });
});

describe('the samples of a turn', () => {
  it('are taken at every degree from top dead centre to top dead centre, and of its time', () => {
    const { crankAngle, time, speed } = cycle.profile;
    expect(crankAngle).toHaveLength(361);
    for (const [i, angle] of crankAngle.entries()) expect(Math.abs(angle - i * DEGREE)).toBeLessThan(1e-12);
    expect(time[0]).toBe(0);
    expect(time[360]).toBe(cycle.after[SLOT.time]! - cycle.before[SLOT.time]!);
    expect(speed[0]).toBe(40);
    expect(speed[360]).toBe(cycle.after[SLOT.speed]!);
    expectWithin(
      integral(
        speed.map((one) => 1 / one),
        crankAngle,
      ),
      time[360]!,
      1e-4,
    );
  });

  it('show the state that the turn begins with and the one that it ends with', () => {
    const { chestPressure, chestTemperature, ends } = cycle.profile;
    for (const [i, y] of [
      [0, cycle.before],
      [360, cycle.after],
    ] as const) {
      const { pressure, temperature } = system.observe(y);
      expect(chestPressure[i]).toBe(pressure[engine.chest]);
      expect(chestTemperature[i]).toBe(temperature[engine.chest]);
      for (const [k, { place }] of engine.ends.entries()) {
        expect(ends[k]!.pressure[i]).toBe(pressure[place]);
        expect(ends[k]!.temperature[i]).toBe(temperature[place]);
      }
    }
  });

  it('show each end by its name, with its sizes, volume and open ports', () => {
    for (const [k, end] of engine.ends.entries()) {
      const own = cycle.profile.ends[k]!;
      const { name, deadCentre, sweptVolume, clearanceVolume } = end;
      expect(own).toMatchObject({ name, deadCentre, sweptVolume, clearanceVolume });
      const { events } = end.valveGear;
      for (let i = 0; i <= 360; i += 15) {
        expectWithin(own.volume[i]!, volumeAt(end, i * DEGREE), 1e-9);
        const angle = i * DEGREE - deadCentre;
        const speed = cycle.profile.speed[i]!;
        expect(own.admissionArea[i]).toBeCloseTo(end.admission.effectiveArea(angle, speed), 15);
        expect(own.exhaustArea[i]).toBeCloseTo(end.exhaust.effectiveArea(angle, speed), 15);
      }
      const at = (angle: number): number => Math.round(((angle + deadCentre) / DEGREE) % 360);
      expect(own.admissionArea[at(events.cutOff / 2)]).toBeGreaterThan(1e-6);
      expect(own.exhaustArea[at(events.cutOff / 2)]).toBe(0);
      expect(own.exhaustArea[at((events.release + events.compression) / 2)]).toBeGreaterThan(1e-6);
      expect(own.admissionArea[at((events.release + events.compression) / 2)]).toBe(0);
    }
  });

  it('add up to the works of the turn', () => {
    const { crankAngle, ends, gasTorque, frictionTorque, loadTorque } = cycle.profile;
    const { after } = cycle;
    const diagrams = ends.reduce((sum, { pressure, volume }) => sum + integral(pressure, volume), 0);
    expectWithin(diagrams, after[slots.gasWork]!, 3e-3);
    expectWithin(integral(gasTorque, crankAngle), after[slots.gasWork]!, 3e-3);
    const friction = after[slots.bearingWork]! + after[slots.pistonWork]! + after[slots.gearWork]!;
    expectWithin(integral(frictionTorque, crankAngle), friction, 3e-3);
    expectWithin(integral(loadTorque, crankAngle), after[slots.loadWork]!, 1e-3);
    for (const work of [after[slots.bearingWork]!, after[slots.pistonWork]!, after[slots.gearWork]!])
      expect(work / friction).toBeGreaterThan(0.05);
  });

  it('add up to the air of the turn, passage by passage', () => {
    const { time, massFlow } = cycle.profile;
    const most = Math.max(...cycle.passageMass.map(Math.abs));
    for (const [i, mass] of cycle.passageMass.entries())
      expect(Math.abs(integral(massFlow[i]!, time) - mass)).toBeLessThan(5e-3 * most);
  });

  it('show what the moving masses and their weight do, by angle and speed alone', () => {
    const { speed, inertiaTorque } = cycle.profile;
    for (const i of [30, 100, 200, 300]) {
      const { inertiaTorque: inertia, gravityTorque: gravity } = system.observe(
        initialState(system, i * DEGREE, speed[i]!),
      );
      expect(Math.min(Math.abs(inertia), Math.abs(gravity))).toBeGreaterThan(0.01);
      expect(inertiaTorque[i]).toBeCloseTo(inertia + gravity, 9);
    }
  });
});

describe('what is said about a turn', () => {
  it('is between which values its speed and every place went', () => {
    const { profile } = cycle;
    const settled = settledCycle(system, cycle);
    expect(settled.profile).toBe(profile);
    expect(settled.speedFluctuation).toBeCloseTo(
      (Math.max(...profile.speed) - Math.min(...profile.speed)) / settled.speed,
      12,
    );
    const range = (column: Float64Array) => ({ min: Math.min(...column), max: Math.max(...column) });
    expect(settled.extremes).toEqual([
      {
        place: 'valve chest',
        pressure: range(profile.chestPressure),
        temperature: range(profile.chestTemperature),
      },
      ...profile.ends.map(({ name, pressure, temperature }) => ({
        place: name,
        pressure: range(pressure),
        temperature: range(temperature),
      })),
    ]);
  });

  it('is how cold the air gets that leaves by an exhaust, of whichever end', () => {
    const cold = (k: number, flow: number): number => {
      const { profile } = cycle;
      const massFlow = profile.massFlow.map((column) => column.map(() => 0));
      massFlow[engine.ends[k]!.exhaustPassage]![200] = flow;
      const ends = profile.ends.map((end, i) => ({
        ...end,
        temperature: end.temperature.map((_, at) => 250 + i + (at === 200 ? 5 : 0)),
      })) as unknown as typeof profile.ends;
      return settledCycle(system, { ...cycle, profile: { ...profile, massFlow, ends } }).coldestExhaust;
    };
    expect(cold(0, 1e-3)).toBe(255);
    expect(cold(1, 1e-3)).toBe(256);
    // What comes in by it, or stands, is the room's.
    expect(cold(1, -1e-3)).toBe(engine.atmosphere.temperature);
    expect(cold(1, 0)).toBe(engine.atmosphere.temperature);
  });

  it('is colder than the room for an engine that expands its air', () => {
    const { coldestExhaust } = settledCycle(system, cycle);
    expect(coldestExhaust).toBeLessThan(engine.atmosphere.temperature - 3);
    const lowest = Math.min(...cycle.profile.ends.flatMap(({ temperature }) => [...temperature]));
    expect(coldestExhaust).toBeGreaterThanOrEqual(lowest);
  });
});
