/** The way that the speed is led to settled running, by turns of a law whose slope is known. */
import { describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../../src/model/engine.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { LEAP, leadToRoot } from '../../../src/run/lead-to-root.ts';
import type { TurnFailure } from '../../../src/run/one-turn.ts';
import { expectWithin } from '../../support/expect-within.ts';
import {
  atFirst,
  cylinderEnergy,
  followByLaw,
  rootSystem,
  straight,
  type TurnLaw,
} from '../../support/level-by-law.ts';

const { engine, slots } = rootSystem;
const CHEST = engine.chest - FIRST_VOLUME;
const END = engine.ends[0].place - FIRST_VOLUME;
const MOMENT = rootSystem.momentOfInertia(0);

/** Where a way leads, whether it got there, and the speeds of its turns. */
function way(start: number, law: TurnLaw) {
  const y = atFirst(start);
  const { follow, asked } = followByLaw(law);
  const found = leadToRoot(rootSystem, y, follow);
  return { y, found, asked, speeds: asked.map((state) => state[SLOT.speed]!) };
}

describe('the way to the root', () => {
  it.each([2, 15, 45, 300])('of a gain that falls along a line leads near from %i rad/s', (start) => {
    const { y, found, asked } = way(start, { gain: straight });
    expect(found).toBe(true);
    expect(asked.length).toBeLessThanOrEqual(5);
    expectWithin(y[SLOT.speed]!, 40, 0.03);
    expectWithin(cylinderEnergy(y), 1.3, 1e-9);
  });

  it('of one that falls with the square leads as near', () => {
    const { y, found } = way(5, { gain: (speed) => 8 - 0.005 * speed ** 2 });
    expect(found).toBe(true);
    expectWithin(y[SLOT.speed]!, 40, 0.03);
  });

  it('takes one turn where the root is near, and a second where it is not', () => {
    expect(way(36, { gain: straight }).asked).toHaveLength(1);
    expect(way(22, { gain: straight }).asked).toHaveLength(2);
  });

  it('takes another where the gas is far from where it settles', () => {
    const start = atFirst(38);
    start[slots.energy(END)]! *= 0.5;
    const { follow, asked } = followByLaw({ gain: straight });
    expect(leadToRoot(rootSystem, start, follow)).toBe(true);
    expect(asked).toHaveLength(2);
  });

  it('leads to the first root that the gain meets uphill', () => {
    // Falls through zero at 10 and at 90, rises through it at 50.
    const gain = (speed: number): number => -2e-5 * (speed - 10) * (speed - 50) * (speed - 90);
    for (const { start, root } of [
      { start: 6, root: 10 },
      { start: 60, root: 90 },
    ]) {
      const { y, found } = way(start, { gain });
      expect(found).toBe(true);
      // One step of a law so curved is a fifth off.
      expectWithin(y[SLOT.speed]!, root, 0.25);
    }
  });

  it('goes by leaps of a bounded length, either way', () => {
    for (const start of [3, 900]) {
      const { speeds } = way(start, { gain: (speed) => 1e-3 * straight(speed) });
      const ratios = speeds.slice(1).map((speed, i) => speed / speeds[i]!);
      for (const ratio of ratios) expect(Math.abs(Math.log(ratio))).toBeLessThan(Math.log(LEAP) + 1e-9);
      expect(Math.abs(Math.log(ratios[0]!))).toBeCloseTo(Math.log(LEAP), 9);
    }
  });

  it('leaps on where a turn gains and its tangent tells nothing', () => {
    const { speeds } = way(3, { gain: (speed) => 1e-3 * straight(speed), tells: (speed) => speed > 10 });
    expectWithin(speeds[1]!, 3 * LEAP, 1e-9);
    expectWithin(speeds[2]!, 3 * LEAP * LEAP, 1e-9);
  });

  it('lets an engine that is faster after its turn than any leap go on from there', () => {
    const [first, second] = way(3, { gain: () => 30 }).speeds;
    expectWithin(second!, Math.sqrt(first! ** 2 + 60 / MOMENT), 1e-9);
    expect(second! / first!).toBeGreaterThan(LEAP);
  });

  it('is found as well between the slowest turns there are and those next to them', () => {
    const { y, found } = way(4, { gain: (speed) => 0.02 * (1.5 - speed) });
    expect(found).toBe(true);
    expectWithin(y[SLOT.speed]!, 1.5, 0.05);
  });

  it('takes the gas along from turn to turn', () => {
    const shares = way(3, { gain: straight }).asked.map(cylinderEnergy);
    expectWithin(shares[1]!, 1 + 0.6 * 0.3, 1e-9);
    expectWithin(shares[2]!, 1 + (0.6 + 0.4 * 0.6) * 0.3, 1e-9);
  });

  it('takes warm air in the chest for air of the supply, at the same pressure', () => {
    const warm = atFirst(30);
    warm[slots.mass(CHEST)]! *= 0.7;
    const { follow, asked } = followByLaw({ gain: straight });
    leadToRoot(rootSystem, warm.slice(), follow);
    const [y] = asked;
    expect(y![slots.energy(CHEST)]).toBe(warm[slots.energy(CHEST)]);
    const temperature =
      y![slots.energy(CHEST)]! / (engine.gas.heatCapacityAtConstantVolume * y![slots.mass(CHEST)]!);
    expectWithin(temperature, engine.supply.temperature, 1e-12);
    expect(y![slots.mass(END)]).toBe(warm[slots.mass(END)]);
  });
});

describe('a way that leads nowhere', () => {
  it('because the engine always gains ends by the count of its turns', () => {
    const { found, asked } = way(2, { gain: (speed) => 1e-4 * speed ** 2 });
    expect(found).toBe(false);
    expect(asked).toHaveLength(80);
  });

  it('because it always loses ends at the slowest turns there are', () => {
    const { found, speeds } = way(60, { gain: (speed) => -1e-5 * speed });
    expect(found).toBe(false);
    expect(speeds.length).toBeLessThan(10);
    expect(Math.min(...speeds)).toBe(1);
    expect(speeds.at(-1)).toBe(1);
  });

  it('ends with the turn that does', () => {
    const failure = (speed: number): TurnFailure | undefined => (speed < 20 ? { reason: 'slow' } : undefined);
    const { found, speeds } = way(60, { gain: (speed) => -1e-3 * speed, failure });
    expect(found).toBe(false);
    expect(speeds).toHaveLength(3);
  });
});
