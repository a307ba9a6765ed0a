/** What a real regulator, fittings and a long hose cost: chest pressure and speed, never the ledgers. */
import { describe, expect, it } from 'vitest';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { SettledCycle } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const own = referenceSpec().supply;
const regulatorOf = (litresPerSecondBar: number, droop: number): EngineSpec['supply']['regulator'] => ({
  inlet_pressure: 801_325,
  sonic_conductance: litresPerSecondBar * 1e-8,
  critical_pressure_ratio: 0.3,
  droop,
});

const settledWith = (supply: Partial<EngineSpec['supply']>): SettledCycle =>
  runEngine(referenceSpec({ supply: { ...own, ...supply } })).settled!;

const meanChest = ({ profile }: SettledCycle): number =>
  profile.chestPressure.subarray(1).reduce((sum, pressure) => sum + pressure, 0) / 360;

describe('behind a regulator that droops', () => {
  const held = settledWith({});
  const small = settledWith({ regulator: regulatorOf(1, 1e5) });
  const stiff = settledWith({ regulator: regulatorOf(20, 0.05e5) });

  it('the chest gets less than from one that holds its pressure', () => {
    expect(meanChest(small)).toBeLessThan(meanChest(held) - 0.05e5);
    expect(meanChest(stiff)).toBeLessThan(meanChest(held));
    expect(meanChest(stiff)).toBeGreaterThan(meanChest(small));
  });

  it('the engine runs slower', () => {
    expect(small.speed).toBeLessThan(stiff.speed);
    expect(stiff.speed).toBeLessThan(held.speed);
    expect(stiff.speed).toBeGreaterThan(0.95 * held.speed);
  });

  it('all air comes in through it, and none goes back', () => {
    const index = small.passages.findIndex(({ name }) => name === 'regulator');
    expect(small.passages[index]).toMatchObject({ from: 'supply', to: 'hose' });
    expect(small.passages[index]!.mass).toBe(small.air.mass);
    expect(Math.min(...small.profile.massFlow[index]!)).toBeGreaterThanOrEqual(0);
  });
});

describe('behind fittings', () => {
  it('of ever narrower bore the engine runs ever slower', () => {
    const speeds = [undefined, 7e-3, 6e-3, 5e-3].map(
      (fitting_bore) => settledWith({ hose: { ...own.hose, fitting_bore, fittings: 2 } }).speed,
    );
    for (const [i, slower] of speeds.slice(1).entries()) expect(slower).toBeLessThan(speeds[i]!);
  });
});
