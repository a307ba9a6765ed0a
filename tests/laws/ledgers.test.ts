/** Mass and energy add up to one part in a thousand million of what went through, however the run ends. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { SettledCycle } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { chosen } from '../support/chosen.ts';
import { nonFinite } from '../support/non-finite.ts';
import {
  constantLoad,
  DEGREE,
  discGear,
  growingLoad,
  holeLeak,
  inertia,
  pistonLeak,
  referenceSpec,
  spoolGear,
} from '../support/reference-engine.ts';

const LIMIT = 1e-9;

const doubleActing = { action: 'double', piston_rod_diameter: 12e-3 } as const;
const glandLeak = chosen(leaks, 'rod gland', { clearance: { by: 'gap', gap: 20e-6 }, length: 15e-3 });
const regulator = {
  inlet_pressure: 801_325,
  sonic_conductance: 2e-8,
  critical_pressure_ratio: 0.3,
  droop: 0.5e5,
};

const runs = [
  ['settles with spools', 'settled', referenceSpec()],
  ['settles with a disc', 'settled', referenceSpec({ valve_gear: discGear({ filmViscosity: 0.05 }) })],
  [
    'settles without any leak',
    'settled',
    referenceSpec({ valve_gear: spoolGear({ clearance: 0 }), leaks: [] }),
  ],
  [
    'settles with leaks everywhere',
    'settled',
    referenceSpec({
      leaks: [
        pistonLeak(20e-6),
        holeLeak('chest to room', 0.8e-3),
        holeLeak('cylinder to room', 0.5e-3),
        holeLeak('chest to cylinder', 0.5e-3),
      ],
    }),
  ],
  [
    'stalls under a growing load',
    'stalled',
    referenceSpec({
      flywheel: inertia(0.1),
      load: constantLoad(3),
      start: { crank_angle: 40 * DEGREE, hand_speed: 30 },
    }),
  ],
  [
    'settles with two working ends',
    'settled',
    referenceSpec({ cylinder: doubleActing, leaks: [pistonLeak(20e-6), glandLeak] }),
  ],
  [
    'settles with two double-acting cylinders at 90°',
    'settled',
    referenceSpec({
      cylinder: { ...doubleActing, cylinders: 2, crank_spacing: 90 * DEGREE, attitude: 'upright' },
      load: growingLoad(4, 0.01),
    }),
  ],
  ['settles with three cylinders', 'settled', referenceSpec({ cylinder: { cylinders: 3 } })],
  [
    'settles behind a regulator, with fittings and wall heat by correlation',
    'settled',
    referenceSpec({
      supply: { regulator, hose: { bore: 8e-3, length: 4, fitting_bore: 4e-3, fittings: 2 } },
      cylinder: { wall_heat: chosen(wallHeats, 'correlation', {}) },
    }),
  ],
  ['never gets round', 'no-start', referenceSpec({ flywheel: inertia(5e-3), load: growingLoad(1.4, 0) })],
  ['never moves', 'no-start', referenceSpec({ load: constantLoad(50) })],
  ['runs out of time', 'not-settled', referenceSpec({ flywheel: inertia(1), run: { longest_time: 3 } })],
] as const;

it.each(runs)('an engine that %s is called %s and loses neither mass nor energy', (_name, kind, spec) => {
  const { outcome, settled, ledger, ...rest } = runEngine(spec);
  expect(outcome.kind).toBe(kind);
  expect(settled === undefined).toBe(kind !== 'settled');
  expect(ledger.mass).toBeLessThan(LIMIT);
  expect(ledger.energy).toBeLessThan(LIMIT);
  expect(nonFinite({ outcome, settled, ledger, ...rest })).toEqual([]);
});

describe('the shares of a settled cycle', () => {
  let settled: SettledCycle | undefined;

  beforeAll(() => {
    const leaks = [pistonLeak(30e-6), holeLeak('chest to cylinder', 1e-3)];
    ({ settled } = runEngine(referenceSpec({ leaks })));
  });

  it('of the air add up to one', () => {
    const { workedShare, leakShare, blowThroughShare, clearanceShare } = settled!.air;
    const shares = [workedShare, leakShare, blowThroughShare, clearanceShare];
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(shares.reduce((sum, share) => sum + share)).toBeCloseTo(1, 12);
  });

  it('of the leaks add up to the leak share', () => {
    const { leaks, leakShare } = settled!.air;
    expect(leaks.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(leakShare, 12);
  });

  it('of the work add up to the net indicated work', () => {
    const { indicated, bearings, piston, valveGear, load, kineticGain } = settled!.work;
    const taken = bearings + piston + valveGear + load + kineticGain;
    expect(Math.abs(indicated - taken)).toBeLessThan(LIMIT * indicated);
  });
});
