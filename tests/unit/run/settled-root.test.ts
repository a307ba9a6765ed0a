/** Settled running as a root: the way that the speed is led to it, and what a search says that finds none. */
import { describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../../src/model/engine.ts';
import { SLOT } from '../../../src/model/slots.ts';
import type { TurnFailure } from '../../../src/run/one-turn.ts';
import { settleByRoot } from '../../../src/run/settled-root.ts';
import { expectWithin } from '../../support/expect-within.ts';
import {
  atFirst,
  cylinderEnergy,
  leading,
  levelByLaw,
  rootSystem,
  straight,
  type TurnLaw,
} from '../../support/level-by-law.ts';

const { engine, slots } = rootSystem;
const CHEST = engine.chest - FIRST_VOLUME;
const END = engine.ends[0].place - FIRST_VOLUME;
const MOMENT = rootSystem.momentOfInertia(0);

const speedsOf = ({ asked }: { readonly asked: readonly Float64Array[] }): number[] =>
  asked.map((y) => y[SLOT.speed]!);

/** Found by a level that only leads, and one that finds. */
function found(start: number, gain: TurnLaw['gain']) {
  const y = atFirst(start);
  const levels = [levelByLaw({ gain, ...leading }), levelByLaw({ gain })] as const;
  return { y, search: settleByRoot(rootSystem, y, levels), levels };
}

describe('the root', () => {
  it.each([2, 15, 45, 300])('of a gain that falls through zero is found from %i rad/s', (start) => {
    const { y, search, levels } = found(start, straight);
    const turns = levels[0].asked.length + levels[1].asked.length;
    expect(search).toEqual({ kind: 'settled', level: 1, turns });
    expect(turns).toBeLessThanOrEqual(14);
    // The last turn asked for is the one that repeats itself, from the state that is handed back.
    expect(levels[1].asked.at(-1)).toEqual(y);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
    expectWithin(cylinderEnergy(y), 1.3, 1e-3);
  });

  it('of a curved gain is found as well', () => {
    const { y, search } = found(5, (speed) => 8 - 0.005 * speed ** 2);
    expect(search.kind).toBe('settled');
    expect(search.turns).toBeLessThanOrEqual(14);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
  });

  it('is the first that the gain meets uphill', () => {
    // Falls through zero at 10 and at 90, rises through it at 50.
    const gain = (speed: number): number => -2e-5 * (speed - 10) * (speed - 50) * (speed - 90);
    for (const { start, root } of [
      { start: 6, root: 10 },
      { start: 60, root: 90 },
    ]) {
      const { y, search } = found(start, gain);
      expect(search.kind).toBe('settled');
      expectWithin(y[SLOT.speed]!, root, 2e-3);
    }
  });

  it('is looked for by leaps of two and a half times the speed at most, either way', () => {
    for (const start of [3, 900]) {
      const level = levelByLaw({ gain: (speed) => 1e-3 * straight(speed) });
      settleByRoot(rootSystem, atFirst(start), [level]);
      const speeds = speedsOf(level);
      const ratios = speeds.slice(1).map((speed, i) => speed / speeds[i]!);
      for (const ratio of ratios) expect(Math.abs(Math.log(ratio))).toBeLessThan(Math.log(2.5) + 1e-9);
      // With nothing known of the slope but that it gains, or loses, the first leap is a whole one.
      expect(Math.abs(Math.log(ratios[0]!))).toBeCloseTo(Math.log(2.5), 9);
    }
  });

  it('lets an engine that is faster after its turn than any leap go on from there', () => {
    const level = levelByLaw({ gain: () => 30 });
    settleByRoot(rootSystem, atFirst(3), [level]);
    const [first, second] = speedsOf(level);
    expectWithin(second!, Math.sqrt(first! ** 2 + 60 / MOMENT), 1e-9);
    expect(second! / first!).toBeGreaterThan(2.5);
  });

  it('is found as well between the slowest turns there are and those next to them', () => {
    const { y, search } = found(2, (speed) => 0.02 * (1.5 - speed));
    expect(search.kind).toBe('settled');
    expectWithin(y[SLOT.speed]!, 1.5, 1e-3);
  });

  it('takes the gas along from turn to turn', () => {
    const level = levelByLaw({ gain: straight });
    settleByRoot(rootSystem, atFirst(3), [level]);
    const shares = level.asked.map(cylinderEnergy);
    expectWithin(shares[1]!, 1 + 0.6 * 0.3, 1e-9);
    expectWithin(shares[2]!, 1 + (0.6 + 0.4 * 0.6) * 0.3, 1e-9);
  });
});

describe('warm air in the chest', () => {
  function warm(): Float64Array {
    const y = atFirst(30);
    y[slots.mass(CHEST)]! *= 0.7;
    return y;
  }

  it('is taken for air of the supply, at the same pressure, when the way is led from afar', () => {
    const level = levelByLaw({ gain: straight });
    settleByRoot(rootSystem, warm(), [level]);
    const [y] = level.asked;
    expect(y![slots.energy(CHEST)]).toBe(warm()[slots.energy(CHEST)]);
    const temperature =
      y![slots.energy(CHEST)]! / (engine.gas.heatCapacityAtConstantVolume * y![slots.mass(CHEST)]!);
    expectWithin(temperature, engine.supply.temperature, 1e-12);
    expect(y![slots.mass(END)]).toBe(warm()[slots.mass(END)]);
  });

  it('is left as it is near the root', () => {
    const level = levelByLaw({ gain: straight });
    settleByRoot(rootSystem, warm(), [level], 8);
    expect(level.asked[0]).toEqual(warm());
  });
});

describe('a search that finds nothing', () => {
  it('of an engine that always gains ends by the count of its turns', () => {
    const level = levelByLaw({ gain: (speed) => 1e-4 * speed ** 2 });
    const search = settleByRoot(rootSystem, atFirst(2), [level]);
    expect(search).toEqual({ kind: 'lost', turns: 80 });
    expect(level.asked).toHaveLength(80);
  });

  it('of an engine that always loses ends at the slowest turns there are', () => {
    const level = levelByLaw({ gain: (speed) => -1e-5 * speed });
    const search = settleByRoot(rootSystem, atFirst(60), [level]);
    expect(search).toEqual({ kind: 'lost', turns: level.asked.length });
    expect(search.turns).toBeLessThan(10);
    expect(Math.min(...speedsOf(level))).toBe(1);
    expect(speedsOf(level).at(-1)).toBe(1);
  });

  it('says that the engine cannot get round where a turn says so', () => {
    const failure = (speed: number): TurnFailure | undefined => (speed < 20 ? { reason: 'slow' } : undefined);
    const level = levelByLaw({ gain: (speed) => -1e-3 * speed, failure });
    expect(settleByRoot(rootSystem, atFirst(60), [level])).toEqual({ kind: 'slow', turns: 3 });
  });

  it.each([undefined, 8])('says so where a turn gives up on its way (slope %s)', (slope) => {
    const failed: TurnFailure = { reason: 'non-finite', x: 3, component: 4 };
    const failure = (_speed: number, turn: number) => (turn === 1 ? failed : undefined);
    const level = levelByLaw({ gain: straight, failure });
    const search = settleByRoot(rootSystem, atFirst(42), [level], slope);
    expect(search).toEqual({ kind: 'failed', failure: failed, turns: 1 });
  });

  it('says so where one gives up near the root', () => {
    const failed: TurnFailure = { reason: 'step-limit', x: 3 };
    const failure = (_speed: number, turn: number) => (turn === 2 ? failed : undefined);
    const level = levelByLaw({ gain: straight, failure, speed: 1e-9, gas: 1e-9 });
    const search = settleByRoot(rootSystem, atFirst(42), [level], 8);
    expect(search).toEqual({ kind: 'failed', failure: failed, turns: 2 });
  });
});
