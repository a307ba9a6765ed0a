/** How the flow laws are rounded at equal pressures does not matter: half of it moves no settled speed by 0.1 %. */
import { expect, it } from 'vitest';
import { idealGas } from '../../src/gas/gas.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { engineSystem } from '../../src/model/system.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { engineWithGas, settledSpeed } from '../support/drive.ts';
import { DEGREE, discGear, inertia, referenceSpec, spoolGear } from '../support/reference-engine.ts';

const roundedBy = (factor: number) =>
  idealGas({
    ...dryAir,
    equalPressureRounding: factor * dryAir.equalPressureRounding,
  });

function speedWith(spec: EngineSpec, factor: number): number {
  const system = engineSystem(engineWithGas(spec, roundedBy(factor)));
  return settledSpeed(system, { angle: 40 * DEGREE, speed: 25, longestTime: 60 });
}

it.each([
  ['honed spools', spoolGear()],
  ['drilled spools', spoolGear({ clearance: 40e-6 })],
  ['a disc', discGear()],
])(
  'with %s',
  (_name, valve_gear) => {
    const spec = referenceSpec({ valve_gear, flywheel: inertia(0.1) });
    const usual = speedWith(spec, 1);
    expect(Math.abs(speedWith(spec, 0.5) / usual - 1)).toBeLessThan(1e-3);
    // The seam does change the engine: a hundredfold rounding is felt.
    expect(Math.abs(speedWith(spec, 100) / usual - 1)).toBeGreaterThan(1e-4);
  },
  60_000,
);
