/** What a settled turn is said to have come to, of totals written down by hand. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import type { MeasuredTurn } from '../../../src/run/measured-turn.ts';
import { settledTurn } from '../../../src/run/settled-cycle.ts';
import { standStill } from '../../../src/run/stand-still.ts';
import { systemOf } from '../../support/drive.ts';
import { holeLeak, pistonLeak, referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(
  referenceSpec({
    leaks: [pistonLeak(12e-6), holeLeak('chest to room', 0.8e-3), holeLeak('chest to cylinder', 0.5e-3)],
  }),
);
const { engine, slots } = system;
const leaksOut = engine.passages.flatMap(({ role, to }, i) => (role === 'leak' && to === 1 ? [i] : []));
const leaksIn = engine.passages.flatMap(({ role, to }, i) => (role === 'leak' && to !== 1 ? [i] : []));
const [{ clearanceVolume }] = engine.ends;

/** Shares of one gram of air, and of it. */
interface Air {
  readonly supplied?: number;
  readonly leak?: number;
  readonly wasted?: number;
  readonly blownThrough?: number;
  /** At cut-off the end holds so much per clearance volume, and as admission opens so much in all. */
  readonly clearance?: number;
  readonly left?: number;
}

const GRAM = 1e-3;

/** A turn of half a second in which each leak to the room, or into the cylinder and out again, took that share. */
function turnWith({ supplied = 1, leak = 0, wasted = 0, blownThrough = 0, clearance = 0, left = 0 }: Air) {
  const before = initialState(system, 0, 20);
  before[SLOT.time] = 3;
  const after = before.slice();
  after[SLOT.crankAngle] = 2 * Math.PI;
  after[SLOT.time] = 3.5;
  after[SLOT.speed] = 22;
  after[slots.gasWork] = 12;
  after[slots.bearingWork] = 1;
  after[slots.pistonWork] = 2;
  after[slots.gearWork] = 0.5;
  after[slots.loadWork] = 6;
  after[slots.wallHeat] = 0.25;
  after[slots.blowThrough] = blownThrough * GRAM;
  const passageMass = engine.passages.map(({ from }) => (from === 0 ? supplied * GRAM : 0.4 * GRAM));
  for (const i of leaksOut) passageMass[i] = leak * GRAM;
  for (const i of leaksIn) after[slots.passageWaste(i)] = wasted * GRAM;
  const atCutOff = { stop: 1, mass: clearance * GRAM * 4, volume: 4 * clearanceVolume };
  const atAdmission = { stop: 0, mass: left * GRAM, volume: clearanceVolume };
  const turn: MeasuredTurn = {
    ...{ before, after, passageMass, residuals: { mass: 0, energy: 0 } },
    ends: [{ atAdmission, atCutOff }],
  };
  return settledTurn(system, turn);
}

describe('a settled turn', () => {
  const turn = turnWith({});
  const swept = engine.sweptVolume;

  it('has the mean speed of its time, and its work in parts', () => {
    expect(turn.period).toBe(0.5);
    expect(turn.speed).toBeCloseTo(4 * Math.PI, 12);
    const kinetic = (speed: number): number => 0.5 * system.momentOfInertia(0) * speed ** 2;
    expect(turn.work.kineticGain).toBeCloseTo(kinetic(22) - kinetic(20), 12);
    expect(turn.work).toMatchObject({
      ...{ indicated: 12, bearings: 1, piston: 2, valveGear: 0.5, load: 6, wallHeat: 0.25 },
    });
  });

  it('has mean pressures, power and air flow by it', () => {
    expect(turn.indicatedMeanEffectivePressure).toBeCloseTo(12 / swept, 6);
    expect(turn.brakeMeanEffectivePressure).toBeCloseTo(6 / swept, 6);
    expect(turn.brakePower).toBeCloseTo(12, 12);
    expect(turn.airMassFlow).toBeCloseTo(2 * GRAM, 15);
    // ISO 8778: 1.185 kg/m³.
    expect(turn.airFlowAnr).toBeCloseTo((2 * GRAM) / 1.185, 15);
    expect(turn.sweptVolume).toBe(swept);
  });

  it('names its passages and where they lead', () => {
    expect(turn.passages.map(({ mass }) => mass)).toEqual(
      engine.passages.map(({ from }, i) => (from === 0 ? GRAM : leaksOut.includes(i) ? 0 : 0.4 * GRAM)),
    );
    const ways = turn.passages.map(({ role, from, to }) => `${role}: ${from} to ${to}`);
    expect(ways[0]).toMatch(/: supply to valve chest$/);
    expect(ways).toContain('admission: valve chest to cylinder');
    expect(ways).toContain('exhaust: cylinder to room');
    expect(ways).toContain('leak: valve chest to room');
  });

  it('has the events of its gear and its cut-off as a share of the stroke', () => {
    expect(turn.events).toBe(engine.ends[0].valveGear.events);
    expect(turn.cutOffFraction).toBeCloseTo(0.5, 9);
  });
});

describe('the air of a turn', () => {
  const n = leaksOut.length;
  const shares = (air: Air): number[] => {
    const { leakShare, blowThroughShare, clearanceShare, workedShare } = turnWith(air).air;
    return [leakShare, blowThroughShare, clearanceShare, workedShare];
  };
  const expectShares = (air: Air, expected: readonly number[]): void => {
    for (const [i, share] of shares(air).entries()) expect(share).toBeCloseTo(expected[i]!, 12);
  };

  it('has worked where nothing else had a claim on it', () => {
    expectShares({}, [0, 0, 0, 1]);
  });

  it('has leaked by what went to the room, and by what went through a cylinder unused', () => {
    expectShares({ leak: 0.02 }, [0.02 * n, 0, 0, 1 - 0.02 * n]);
    expectShares({ wasted: 0.03 }, [0.03 * leaksIn.length, 0, 0, 1 - 0.03 * leaksIn.length]);
    const { leaks } = turnWith({ leak: 0.02, wasted: 0.03 }).air;
    expect(leaks).toHaveLength(n + leaksIn.length);
    expect(leaks.map(({ name }) => name)).toEqual(
      engine.passages.filter(({ role }) => role === 'leak').map(({ name }) => name),
    );
    expect(leaks.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(
      0.02 * n + 0.03 * leaksIn.length,
      12,
    );
  });

  it('that came in by a leak from the room has not leaked', () => {
    expectShares({ leak: -0.02 }, [0, 0, 0, 1]);
  });

  it('was blown through, and filled the clearance beyond what was left in it', () => {
    expectShares({ blownThrough: 0.1 }, [0, 0.1, 0, 0.9]);
    expectShares({ clearance: 0.3, left: 0.1 }, [0, 0, 0.2, 0.8]);
    expectShares({ clearance: 0.1, left: 0.3 }, [0, 0, 0, 1]);
  });

  it('is claimed in this order: leaks, what was blown through, clearance', () => {
    expectShares({ wasted: 0.7 / leaksIn.length, blownThrough: 0.5, clearance: 0.5 }, [0.7, 0.3, 0, 0]);
    expectShares({ wasted: 0.2 / leaksIn.length, blownThrough: 0.5, clearance: 0.5 }, [0.2, 0.5, 0.3, 0]);
    expectShares({ wasted: 3, blownThrough: 0.5 }, [1, 0, 0, 0]);
  });

  it('is in shares of what there is, and of nothing where nothing came', () => {
    expectShares({ supplied: 2, blownThrough: 0.5 }, [0, 0.25, 0, 0.75]);
    expect(shares({ supplied: 0, blownThrough: 0.5 }).slice(0, 3)).toEqual([0, 0, 0]);
    expect(turnWith({ supplied: 3 }).air.mass).toBeCloseTo(3 * GRAM, 15);
  });
});

describe('an engine that stands under air', () => {
  const y = initialState(system, Math.PI / 2, 0);
  for (const [i, factor] of [3, 2].entries()) {
    y[slots.mass(i)]! *= factor;
    y[slots.energy(i)]! *= factor;
  }
  const { massFlow } = system.observe(y);
  const flows = [...massFlow];
  const still = standStill(system, y);

  it('shows the pressures that reach it', () => {
    expect(still.chestPressure / engine.atmosphere.pressure).toBeCloseTo(3, 9);
    expect(still.cylinderPressure / engine.atmosphere.pressure).toBeCloseTo(2, 9);
    expect(still.airFlowAnr).toBeCloseTo(
      flows[engine.passages.findIndex(({ from }) => from === 0)]! / 1.185,
      12,
    );
  });

  it('shows every leak that hisses, the largest first, and no port', () => {
    const expected = engine.passages
      .map(({ name, role }, i) => ({ name, role, massFlow: flows[i]! }))
      .filter(({ role }) => role === 'leak');
    expect(still.leaks.map(({ name }) => name).toSorted()).toEqual(
      expected.map(({ name }) => name).toSorted(),
    );
    for (const { name, massFlow: flow } of still.leaks)
      expect(flow).toBe(expected.find((leak) => leak.name === name)!.massFlow);
    const found = still.leaks.map((leak) => leak.massFlow);
    expect(found).toEqual(found.toSorted((a, b) => b - a));
    expect(still.leaks.length).toBeGreaterThan(2);
  });

  it('leaves out a leak without flow, or into the engine', () => {
    const calm = initialState(system, Math.PI / 2, 0);
    expect(standStill(system, calm).leaks).toEqual([]);
    for (const slot of [slots.mass(1), slots.energy(1)]) calm[slot]! *= 0.5;
    // The piston now leaks inward; only what leads from the chest into the cylinder flows its own way.
    const { leaks } = standStill(system, calm);
    expect(leaks.every(({ massFlow: flow }) => flow > 0)).toBe(true);
    expect(leaks.map(({ name }) => name)).not.toContain(engine.passages[leaksOut[0]!]!.name);
  });
});
