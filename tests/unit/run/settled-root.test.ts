/**
 * Settled running as a root, of turns by a law of our own in place of an engine's: the gain of kinetic energy in a turn is
 * a given function of the speed, and the gas goes a share of its way to where it settles.
 */
import { describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../../src/model/engine.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import type { TurnFailure } from '../../../src/run/one-turn.ts';
import { levelOf, settleByRoot, type Level } from '../../../src/run/settled-root.ts';
import { systemOf } from '../../support/drive.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { referenceSpec } from '../../support/reference-engine.ts';
import { stepperByLaw } from '../../support/stepper-by-law.ts';

const system = systemOf(referenceSpec());
const { engine, slots } = system;
const CHEST = engine.chest - FIRST_VOLUME;
const END = engine.ends[0].place - FIRST_VOLUME;
const MOMENT = system.momentOfInertia(0);

interface TurnLaw extends Partial<Pick<Level, 'speed' | 'gas' | 'enough'>> {
  /** [J] at a speed [rad/s]. */
  readonly gain: (speed: number) => number;
  /** Energy of the cylinder where it settles, in units of what it is at first. */
  readonly gas?: number;
  readonly failure?: (speed: number, turn: number) => TurnFailure | undefined;
}

const atFirst = (speed: number): Float64Array => initialState(system, 0, speed);

/** With the states from which turns were asked for. */
function levelByLaw({ gain, failure, ...close }: TurnLaw): Level & { readonly asked: Float64Array[] } {
  const asked: Float64Array[] = [];
  const gasGoal = 1.3 * atFirst(0)[slots.energy(END)]!;
  return {
    ...{ speed: 1e-4, enough: true },
    ...close,
    gas: close.gas ?? 1e-3,
    asked,
    turn: (y) => {
      asked.push(y.slice());
      const speed = y[SLOT.speed]!;
      const failed = failure?.(speed, asked.length);
      if (failed) return failed;
      const after = y.slice();
      after[SLOT.speed] = Math.sqrt(Math.max(0, speed ** 2 + (2 * gain(speed)) / MOMENT));
      after[slots.energy(END)]! += 0.6 * (gasGoal - y[slots.energy(END)]!);
      return after;
    },
  };
}

const speedsOf = ({ asked }: { readonly asked: readonly Float64Array[] }): number[] =>
  asked.map((y) => y[SLOT.speed]!);

/** Falls along a straight line through zero at 40 rad/s. */
const straight = (speed: number): number => 0.2 * (40 - speed);

const leading = { speed: 1e-2, gas: 4e-2, enough: false };

/** Found by a level that only leads, and one that finds. */
function found(start: number, gain: TurnLaw['gain']) {
  const y = atFirst(start);
  const levels = [levelByLaw({ gain, ...leading }), levelByLaw({ gain })] as const;
  return { y, search: settleByRoot(system, y, levels), levels };
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
    expectWithin(y[slots.energy(END)]! / atFirst(0)[slots.energy(END)]!, 1.3, 1e-3);
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
      settleByRoot(system, atFirst(start), [level]);
      const speeds = speedsOf(level);
      const ratios = speeds.slice(1).map((speed, i) => speed / speeds[i]!);
      for (const ratio of ratios) expect(Math.abs(Math.log(ratio))).toBeLessThan(Math.log(2.5) + 1e-9);
      // With nothing known of the slope but that it gains, or loses, the first leap is a whole one.
      expect(Math.abs(Math.log(ratios[0]!))).toBeCloseTo(Math.log(2.5), 9);
    }
  });

  it('lets an engine that is faster after its turn than any leap go on from there', () => {
    const level = levelByLaw({ gain: () => 30 });
    settleByRoot(system, atFirst(3), [level]);
    const [first, second] = speedsOf(level);
    expectWithin(second!, Math.sqrt(first! ** 2 + 60 / MOMENT), 1e-9);
    expect(second! / first!).toBeGreaterThan(2.5);
  });

  it('takes the gas along from turn to turn', () => {
    const level = levelByLaw({ gain: straight });
    settleByRoot(system, atFirst(3), [level]);
    const shares = level.asked.map((y) => y[slots.energy(END)]! / atFirst(0)[slots.energy(END)]!);
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
    settleByRoot(system, warm(), [level]);
    const [y] = level.asked;
    expect(y![slots.energy(CHEST)]).toBe(warm()[slots.energy(CHEST)]);
    const temperature =
      y![slots.energy(CHEST)]! / (engine.gas.heatCapacityAtConstantVolume * y![slots.mass(CHEST)]!);
    expectWithin(temperature, engine.supply.temperature, 1e-12);
    expect(y![slots.mass(END)]).toBe(warm()[slots.mass(END)]);
  });

  it('is left as it is near the root', () => {
    const level = levelByLaw({ gain: straight });
    settleByRoot(system, warm(), [level], 8);
    expect(level.asked[0]).toEqual(warm());
  });
});

describe('near the root, with its slope', () => {
  it('every turn serves to find all unknowns together', () => {
    const levels = [levelByLaw({ gain: straight, ...leading }), levelByLaw({ gain: straight })] as const;
    const y = atFirst(42);
    const search = settleByRoot(system, y, levels, 0.2 * 40);
    expect(search.kind).toBe('settled');
    expect(search.turns).toBeLessThanOrEqual(6);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
  });
});

describe('turns of ever closer levels', () => {
  const rough = () => levelByLaw({ gain: (speed) => straight(speed) - 0.2, ...leading });

  it('end at the first that is close enough', () => {
    const levels = [rough(), levelByLaw({ gain: straight }), levelByLaw({ gain: straight })] as const;
    const y = atFirst(5);
    const search = settleByRoot(system, y, levels);
    expect(search).toMatchObject({ kind: 'settled', level: 1 });
    expect(search.turns).toBe(levels[0].asked.length + levels[1].asked.length);
    expect(levels[2].asked).toEqual([]);
    expectWithin(y[SLOT.speed]!, 40, 1e-3);
  });

  it('go on to the closer one where one never comes to repeat itself, and end with it', () => {
    let way = 1;
    // Noise in the gas that no step can foresee.
    const noisy = (): Level & { readonly asked: Float64Array[] } => {
      const level = levelByLaw({ gain: straight });
      const turn = (y: Float64Array): Float64Array => {
        const after = level.turn(y) as Float64Array;
        way = -way;
        after[slots.energy(END)]! *= 1 + 0.05 * way;
        return after;
      };
      return { ...level, turn };
    };
    const levels = [rough(), noisy(), noisy()] as const;
    const search = settleByRoot(system, atFirst(5), levels);
    expect(search.kind).toBe('lost');
    // The first leads near and is asked three times at most from there, counting the last of its lead.
    expect(levels[1].asked).toHaveLength(6);
    expect(levels[2].asked).toHaveLength(15);
    const good = [rough(), noisy(), levelByLaw({ gain: straight })] as const;
    expect(settleByRoot(system, atFirst(5), good)).toMatchObject({ kind: 'settled', level: 2 });
    expect(good[2].asked.length).toBeLessThan(8);
  });

  it('leave a level that only leads as soon as it repeats itself, or after three turns near the root', () => {
    const near = levelByLaw({ gain: straight, speed: 0.05, gas: 0.5, enough: false });
    settleByRoot(system, atFirst(39), [near, levelByLaw({ gain: straight })], 8);
    expect(near.asked).toHaveLength(2);
    const never = levelByLaw({ gain: straight, speed: 0, gas: 0, enough: false });
    settleByRoot(system, atFirst(39), [never, levelByLaw({ gain: straight })], 8);
    expect(never.asked).toHaveLength(3);
  });

  it('that all lead only find nothing', () => {
    expect(settleByRoot(system, atFirst(39), [rough()], 8)).toMatchObject({ kind: 'lost' });
  });
});

describe('a search that finds nothing', () => {
  it('of an engine that always gains ends by the count of its turns', () => {
    const level = levelByLaw({ gain: (speed) => 1e-4 * speed ** 2 });
    const search = settleByRoot(system, atFirst(2), [level]);
    expect(search).toEqual({ kind: 'lost', turns: 80 });
    expect(level.asked).toHaveLength(80);
  });

  it('of an engine that always loses ends at the slowest turns there are', () => {
    const level = levelByLaw({ gain: (speed) => -1e-5 * speed });
    const search = settleByRoot(system, atFirst(60), [level]);
    expect(search).toEqual({ kind: 'lost', turns: level.asked.length });
    expect(search.turns).toBeLessThan(10);
    expect(Math.min(...speedsOf(level))).toBe(1);
    expect(speedsOf(level).at(-1)).toBe(1);
  });

  it('says that the engine cannot get round where a turn says so', () => {
    const failure = (speed: number): TurnFailure | undefined => (speed < 20 ? { reason: 'slow' } : undefined);
    const level = levelByLaw({ gain: (speed) => -1e-3 * speed, failure });
    expect(settleByRoot(system, atFirst(60), [level])).toEqual({ kind: 'slow', turns: 3 });
  });

  it.each([undefined, 8])('says so where a turn gives up on its way (slope %s)', (slope) => {
    const failed: TurnFailure = { reason: 'non-finite', x: 3, component: 4 };
    const failure = (_speed: number, turn: number) => (turn === 1 ? failed : undefined);
    const level = levelByLaw({ gain: straight, failure });
    const search = settleByRoot(system, atFirst(42), [level], slope);
    expect(search).toEqual({ kind: 'failed', failure: failed, turns: 1 });
  });

  it('says so where one gives up near the root', () => {
    const failed: TurnFailure = { reason: 'step-limit', x: 3 };
    const failure = (_speed: number, turn: number) => (turn === 2 ? failed : undefined);
    const level = levelByLaw({ gain: straight, failure, speed: 1e-9, gas: 1e-9 });
    const search = settleByRoot(system, atFirst(42), [level], 8);
    expect(search).toEqual({ kind: 'failed', failure: failed, turns: 2 });
  });
});

describe('a level that runs turns by a stepper', () => {
  it('hands over the state a turn later, leaves the one before, and says why a turn ended early', () => {
    const y = atFirst(20);
    const close = { speed: 1, gas: 2, enough: true };
    const level = levelOf(stepperByLaw({}).stepper, close);
    expect(level).toMatchObject(close);
    const after = level.turn(y) as Float64Array;
    expect(after[SLOT.crankAngle]).toBe(2 * Math.PI);
    expect(y).toEqual(atFirst(20));
    expect(level.turn(atFirst(0.1))).toEqual({ reason: 'slow' });
  });
});
