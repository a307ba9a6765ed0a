/** Loads, flywheels, wall heats, gases and cam laws keep their contracts; bad ones are found out. */
import { describe, expect, it } from 'vitest';
import type { Gas } from '../../src/gas/gas.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { gases } from '../../src/gas/registry.ts';
import type { SutherlandViscosity } from '../../src/gas/sutherland.ts';
import { camLaws } from '../../src/parts/cams/cam-law.ts';
import { flywheels } from '../../src/parts/flywheels/registry.ts';
import type { Load } from '../../src/parts/loads/load.ts';
import { quadraticLoad } from '../../src/parts/loads/quadratic.ts';
import { loads } from '../../src/parts/loads/registry.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import type { SteadyWall } from '../../src/parts/wall-heat/wall-heat.ts';
import { helium } from '../support/helium.ts';
import { context, samplesOf } from './context.ts';
import {
  camLawComplaints,
  flywheelComplaints,
  gasComplaints,
  loadComplaints,
  wallHeatComplaints,
} from './contract-of-small-parts.ts';

/** That of dry air so many times, and what its numbers say so many times. */
const dryViscosity = (law: number, numbers: number): SutherlandViscosity =>
  Object.assign((t: number) => law * dryAir.viscosity(t), {
    factor: numbers * law * dryAir.viscosity.factor,
    constant: dryAir.viscosity.constant,
  });

describe('every load', () => {
  it.each(loads.kinds)('$kind', (kind) => {
    const complaints = samplesOf(kind, 30).flatMap((choice) => loadComplaints(choice.build(context)));
    expect(complaints).toEqual([]);
  });

  it.each<[string, (speed: number) => number]>([
    ['drives', (speed) => 1 - speed],
    ['is infinite at rest', (speed) => 1 / speed],
    ['is no number at speed', (speed) => Math.sqrt(100 - speed)],
  ])('that %s is found out', (_fault, torque) => {
    expect(loadComplaints({ torque })).not.toEqual([]);
  });

  it.each<[string, NonNullable<Load['quadratic']>]>([
    ['at rest', [1.01, 0.1, 0.01]],
    ['with the speed', [1, 0.1001, 0.01]],
    ['with its square', [1, 0.1, 0.010_000_01]],
  ])('whose numbers say something else %s is found out', (_where, quadratic) => {
    const load = quadraticLoad(1, 0.1, 0.01);
    expect(loadComplaints(load)).toEqual([]);
    expect(loadComplaints({ ...load, quadratic })).not.toEqual([]);
  });

  it('that has been let go but for its numbers is found out', () => {
    expect(loadComplaints({ ...quadraticLoad(1, 0, 0), torque: () => 0 })).not.toEqual([]);
  });
});

describe('every flywheel', () => {
  it.each(flywheels.kinds)('$kind', (kind) => {
    const complaints = samplesOf(kind, 30).flatMap((choice) => flywheelComplaints(choice.build(context)));
    expect(complaints).toEqual([]);
  });

  it.each([
    ['has no inertia', { momentOfInertia: 0 }],
    ['has no rim', { momentOfInertia: 1, rim: { radius: 0, density: 7850 } }],
  ])('that %s is found out', (_fault, flywheel) => {
    expect(flywheelComplaints(flywheel)).not.toEqual([]);
  });
});

const steadyWall = (coefficient: number, wallTemperature: number): SteadyWall => ({
  kind: 'steady',
  coefficient,
  wallTemperature,
});

describe('every law of wall heat', () => {
  it.each(wallHeats.kinds)('$kind', (kind) => {
    const complaints = samplesOf(kind, 30).flatMap((choice) => wallHeatComplaints(choice.build(context)));
    expect(complaints).toEqual([]);
  });

  it.each<[string, (area: number, temperature: number) => number]>([
    ['heats what is hot', (area, t) => area * (t - 290)],
    ['needs no area', (_area, t) => 290 - t],
    ['is no number', (area, t) => area * Math.sqrt(290 - t)],
  ])('that %s is found out', (_fault, flow) => {
    expect(wallHeatComplaints({ flow })).not.toEqual([]);
  });

  it.each<[string, number, number]>([
    ['another coefficient', 80.001, 300],
    ['another temperature', 80, 300.01],
  ])('whose numbers tell of %s is found out', (_what, coefficient, wallTemperature) => {
    const flow = (area: number, t: number): number => 80 * area * (300 - t);
    expect(wallHeatComplaints({ flow, law: steadyWall(80, 300) })).toEqual([]);
    expect(wallHeatComplaints({ flow, law: steadyWall(coefficient, wallTemperature) })).not.toEqual([]);
  });

  it('that goes with pressure or speed but for its numbers is found out', () => {
    const flow = (area: number, t: number, p: number, speed: number): number =>
      80 * area * (300 - t) * (speed > 20 || p > 3e5 ? 2 : 1);
    expect(wallHeatComplaints({ flow, law: steadyWall(80, 300) })).not.toEqual([]);
  });
});

describe('every gas', () => {
  it('has a name of its own', () => {
    expect(new Set(gases.map(({ name }) => name)).size).toBe(gases.length);
  });

  it.each(gases)('$name', (gas) => {
    expect(gasComplaints(gas)).toEqual([]);
  });

  it('may also be helium', () => {
    expect(gasComplaints(helium)).toEqual([]);
  });

  it.each<[string, Partial<Gas>]>([
    ['heats without expanding', { heatCapacityAtConstantPressure: dryAir.heatCapacityAtConstantVolume }],
    ['chokes at another ratio', { criticalPressureRatio: 0.6 }],
    ['chokes with another flow', { chokedFlowFactor: 0.041 }],
    ['turns to treacle', { viscosity: Object.assign(() => 0, { factor: 0, constant: 110 }) }],
    ['is not rounded', { equalPressureRounding: 0 }],
    ['has nothing to show', { checks: [] }],
    ['misses a published value', { viscosity: dryViscosity(1.02, 1) }],
    ['has the factor of another viscosity', { viscosity: dryViscosity(1, 1.001) }],
    [
      'has the constant of another viscosity',
      { viscosity: Object.assign(dryViscosity(1, 1), { constant: 111 }) },
    ],
  ])('that %s is found out', (_fault, change) => {
    expect(gasComplaints({ ...dryAir, ...change })).not.toEqual([]);
  });
});

describe('every cam law', () => {
  it.each(camLaws)('$name', (law) => {
    expect(camLawComplaints(law)).toEqual([]);
  });

  it.each<[string, (u: number) => number]>([
    ['starts with a knock', (u) => u],
    ['overshoots', (u) => u ** 3 * (10 - 15 * u + 6 * u * u) + 0.4 * Math.sin(2 * Math.PI * u) ** 3],
    ['does not arrive', (u) => 0.9 * u ** 3 * (10 - 15 * u + 6 * u * u)],
    ['arrives otherwise than it starts', (u) => u * u * (2 - u)],
    [
      'kinks half way',
      (u) => (u < 0.5 ? 2 * u * u : 1 - 2 * (1 - u) ** 2) + 0.1 * Math.sin(4 * Math.PI * u) ** 3,
    ],
  ])('that %s is found out', (_fault, lift) => {
    expect(camLawComplaints({ name: 'bad', lift })).not.toEqual([]);
  });
});
