/** The kernel reckons the heat of the walls by numbers: it is what the law of the walls says, whatever the law. */
import { describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { wallArea } from '../../src/parts/cylinder.ts';
import type { WallHeat } from '../../src/parts/wall-heat/wall-heat.ts';
import { wallHeats } from '../../src/parts/wall-heat/registry.ts';
import { chosen } from '../support/chosen.ts';
import { systemOf } from '../support/drive.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const VALUES: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  none: {},
  constant: { coefficient: 80, wall_temperature: 290 },
  correlation: { wall_temperature: 290 },
};

describe.each(wallHeats.kinds.map(({ kind }) => kind))('%s', (kind) => {
  const wall_heat = chosen(wallHeats, kind, VALUES[kind] ?? {});
  const system = systemOf(referenceSpec({ cylinder: { wall_heat } }));
  const { engine, slots } = system;
  const end = engine.volumes.length - 1;

  /** Of the only cylinder end, at a crank speed: by the kernel, and by the law. */
  function both(law: WallHeat, speed: number): readonly [number, number] {
    const y = initialState(system, 2, speed);
    // Compressed and warm.
    y[slots.mass(end)]! *= 3;
    y[slots.energy(end)]! *= 3.4;
    const { wallHeat, pressure, temperature, endVolume } = system.observe(y);
    const area = wallArea(engine.ends[0], engine.cylinder.bore, endVolume[0]!);
    const place = FIRST_VOLUME + end;
    return [wallHeat[0]!, law.flow(area, temperature[place]!, pressure[place]!, speed)];
  }

  it.each([0, 1e-3, 1, 40, 400])('at %d rad/s', (speed) => {
    const [ours, expected] = both(engine.wallHeat, speed);
    expect(Math.abs(ours - expected)).toBeLessThanOrEqual(1e-14 * Math.abs(expected));
  });

  it('gives the kernel numbers that it uses', () => {
    expect(engine.wallHeat.law).toBeDefined();
  });
});
