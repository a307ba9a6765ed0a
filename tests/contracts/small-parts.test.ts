/** Loads, flywheels, wall heats, gases and cam laws keep their contracts; bad ones are found out. */
import { describe, expect, it } from 'vitest';
import { idealGas, type Gas } from '../../src/gas/gas.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { gases } from '../../src/gas/registry.ts';
import { camLaws } from '../../src/parts/cams/cam-law.ts';
import { flywheels } from '../../src/parts/flywheels/registry.ts';
import { loads } from '../../src/parts/loads/registry.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { context, samplesOf } from './context.ts';
import {
  camLawComplaints,
  flywheelComplaints,
  gasComplaints,
  loadComplaints,
  wallHeatComplaints,
} from './contract-of-small-parts.ts';

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
});

describe('every gas', () => {
  it('has a name of its own', () => {
    expect(new Set(gases.map(({ name }) => name)).size).toBe(gases.length);
  });

  it.each(gases)('$name', (gas) => {
    expect(gasComplaints(gas)).toEqual([]);
  });

  it('may also be helium', () => {
    const viscosity = (): number => 2e-5;
    const helium = {
      name: 'helium',
      specificGasConstant: 2077.1,
      heatCapacityRatio: 5 / 3,
      prandtlNumber: 0.67,
      viscosity,
    };
    expect(gasComplaints(idealGas(helium))).toEqual([]);
  });

  it.each<[string, Partial<Gas>]>([
    ['heats without expanding', { heatCapacityAtConstantPressure: dryAir.heatCapacityAtConstantVolume }],
    ['chokes at another ratio', { criticalPressureRatio: 0.6 }],
    ['chokes with another flow', { chokedFlowFactor: 0.041 }],
    ['turns to treacle', { viscosity: () => 0 }],
    ['is not rounded', { equalPressureRounding: 0 }],
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
