/**
 * At a given speed, more leak never saves air. The flywheel is so heavy that the speed stays as given; six turns let the
 * gas in chest and cylinder find its cycle.
 */
import { describe, expect, it } from 'vitest';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { stateAfterTurns, systemOf } from '../support/drive.ts';
import {
  discGear,
  holeLeak,
  inertia,
  pistonLeak,
  referenceSpec,
  spoolGear,
} from '../support/reference-engine.ts';

/** Air from the supply in one turn [kg]. */
function airPerTurn(spec: EngineSpec): number {
  const system = systemOf(spec);
  return stateAfterTurns(system, 30, 6)[system.slots.passageMass(0)]!;
}

const heavy = inertia(1000);
const microns = [0, 5, 10, 20, 40, 80].map((clearance) => clearance * 1e-6);

describe('more leak takes more air', () => {
  it.each<[string, (clearance: number) => EngineSpec]>([
    ['past the spools', (c) => referenceSpec({ flywheel: heavy, valve_gear: spoolGear({ clearance: c }) })],
    ['past the piston', (c) => referenceSpec({ flywheel: heavy, leaks: [pistonLeak(c)] })],
    [
      'across the disc',
      (c) => referenceSpec({ flywheel: heavy, valve_gear: discGear({ faceGap: 2e-6 + c }) }),
    ],
    [
      'out of the chest',
      (c) => referenceSpec({ flywheel: heavy, leaks: [holeLeak('chest to room', 30 * c)] }),
    ],
    [
      'into the cylinder',
      (c) => referenceSpec({ flywheel: heavy, leaks: [holeLeak('chest to cylinder', 30 * c)] }),
    ],
    [
      'out of the cylinder',
      (c) => referenceSpec({ flywheel: heavy, leaks: [holeLeak('cylinder to room', 30 * c)] }),
    ],
  ])('%s', (_name, specWith) => {
    const air = microns.map((clearance) => airPerTurn(specWith(clearance)));
    // What six turns leave of the start is one part in ten thousand.
    for (const [i, more] of air.slice(1).entries()) expect(more).toBeGreaterThan(air[i]! * (1 - 1e-4));
    expect(air.at(-1)).toBeGreaterThan(1.05 * air[0]!);
  });
});
