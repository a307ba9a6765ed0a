/** A leak that was measured by pressure decay gives the measurement back when the decay is integrated. */
import { describe, expect, it } from 'vitest';
import { partContext } from '../../src/parts/engine-description.ts';
import { leaks } from '../../src/parts/leaks/registry.ts';
import { annulusResistance } from '../../src/gas/gap.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { decayResistance } from '../../src/gas/pressure-decay.ts';
import { chosen } from '../support/chosen.ts';
import { decayed } from '../support/decaying-volume.ts';
import { expectWithin } from '../support/expect-within.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const context = partContext(referenceSpec());
const ROOM = context.atmosphericPressure;

interface Measured {
  readonly volume: number;
  readonly from_pressure: number;
  readonly to_pressure: number;
  readonly time: number;
  readonly temperature?: number;
}

const leakOf = (measured: Measured) =>
  chosen(leaks, 'pressure decay', { between: 'cylinder to room', ...measured });

const atRoom = (measured: Measured) => ({
  gas: context.gas,
  volume: measured.volume,
  from: measured.from_pressure,
  against: ROOM,
  temperature: measured.temperature ?? context.atmosphericTemperature,
});

describe('a measured decay', () => {
  it.each([
    { volume: 1e-4, from_pressure: ROOM + 3e5, to_pressure: ROOM + 2e5, time: 40 },
    { volume: 1e-3, from_pressure: ROOM + 8e5, to_pressure: ROOM + 1e4, time: 600 },
    { volume: 6e-5, from_pressure: ROOM + 5e4, to_pressure: ROOM + 4.99e4, time: 3600 },
    { volume: 2e-4, from_pressure: ROOM + 6e5, to_pressure: ROOM + 3e5, time: 5, temperature: 310 },
  ])('of $volume m³ from $from_pressure to $to_pressure Pa takes $time s again', (measured) => {
    const passage = leakOf(measured).build(context);
    const { pressure } = decayed(passage, atRoom(measured), measured.time);
    expectWithin((pressure - ROOM) / (measured.to_pressure - ROOM), 1, 1e-8);
  });

  it('goes on as it began: two halves of a test tell the same leak as the whole', () => {
    const whole = { volume: 1e-4, from_pressure: ROOM + 4e5, to_pressure: ROOM + 1e5, time: 100 };
    const { pressure: half } = decayed(leakOf(whole).build(context), atRoom(whole), 50);
    const first = leakOf({ ...whole, to_pressure: half, time: 50 }).build(context);
    const second = leakOf({ ...whole, from_pressure: half, time: 50 }).build(context);
    const flow = (passage: typeof first) => passage.massFlow(0, 3e5, 290, ROOM, 290, 0);
    expectWithin(flow(first), flow(second), 1e-8);
  });

  it('finds the resistance of a ring gap that the volume leaked through', () => {
    const resistance = annulusResistance(0.05, 10e-6, 0.04, 1);
    const ring = {
      ...leakOf({ volume: 1, from_pressure: 3e5, to_pressure: 2e5, time: 1 }).build(context),
      massFlow: (_angle: number, p: number, t: number, back: number) =>
        (p * p - back * back) / (24 * dryAir.viscosity(t) * dryAir.specificGasConstant * t * resistance),
    };
    const own = { gas: dryAir, volume: 1e-4, from: 5e5, against: ROOM, temperature: 293.15 };
    const { pressure } = decayed(ring, own, 2);
    const decay = { volume: 1e-4, from: 5e5, to: pressure, against: ROOM, time: 2 };
    expectWithin(decayResistance(decay, dryAir.viscosity(293.15)), resistance, 1e-8);
  });
});

describe('a decay that cannot be', () => {
  const sound = { volume: 1e-4, from_pressure: ROOM + 3e5, to_pressure: ROOM + 2e5, time: 40 };

  it('is said so, a sound one is not', () => {
    expect(leakOf(sound).complaints(context)).toEqual([]);
    expect(leakOf({ ...sound, to_pressure: ROOM + 3e5 }).complaints(context)).toHaveLength(1);
    expect(leakOf({ ...sound, to_pressure: ROOM }).complaints(context)).toHaveLength(1);
    expect(
      leakOf({ ...sound, from_pressure: ROOM - 2, to_pressure: ROOM - 3 }).complaints(context),
    ).toHaveLength(1);
  });
});
