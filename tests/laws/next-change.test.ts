/**
 * What the next change promises, held against the model: an engine built as advised runs, and on less air for its work, or
 * with more work. The loss-free turn that decides is compared with whole runs.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/index.ts';
import { gapFlow } from '../../src/gas/gap.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { RunResult, SettledCycle } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { fillingOfClearance, squeezedClearance } from '../../src/verdict/next-change/clearance.ts';
import { idealAir, idealWork, prospectOf, type IdealTurn } from '../../src/verdict/next-change/ideal-turn.ts';
import { lateCutOff } from '../../src/verdict/next-change/pressure-losses.ts';
import { expectWithin } from '../support/expect-within.ts';
import { constantLoad, DEGREE, inertia, referenceSpec, RPM, spoolGear } from '../support/reference-engine.ts';

function scenario(name: string): EngineSpec {
  const file = `scenarios/${name}.yaml`;
  const reading = readScenario(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(`${name} cannot be read`);
  return reading.spec;
}

const withClearance = (spec: EngineSpec, factor: number): EngineSpec => ({
  ...spec,
  cylinder: { ...spec.cylinder, clearance: factor * spec.cylinder.clearance },
});

const settledOf = (result: RunResult): SettledCycle => {
  if (result.settled === undefined) throw new Error(result.outcome.reason);
  return result.settled;
};

const airPerWork = ({ air, work }: SettledCycle): number => air.mass / work.load;

describe('half the gap', () => {
  // A slit of height h, width w and length l along the flow has Z = l/(w h³) and A = w h.
  const flow = (height: number, pressure: number): number =>
    gapFlow(dryAir, 5e-3 / (30e-3 * height ** 3), 30e-3 * height, pressure, 290, 1e5);
  const left = (height: number, pressure: number): number =>
    flow(height / 2, pressure) / flow(height, pressure);

  it.each([5e-6, 20e-6, 60e-6, 180e-6, 500e-6])(
    'leaves between half and an eighth of a leak of %f m',
    (height) => {
      for (const pressure of [1.01e5, 1.5e5, 4e5, 9e5]) {
        expect(left(height, pressure)).toBeGreaterThan(0.12499);
        expect(left(height, pressure)).toBeLessThan(0.50001);
      }
    },
  );

  it('comes near to either', () => {
    expect(left(5e-6, 1.5e5)).toBeLessThan(0.13);
    expect(left(500e-6, 4e5)).toBeGreaterThan(0.49);
  });
});

describe('the loss-free turn', () => {
  const turn: IdealTurn = {
    supply: 4e5,
    room: 1e5,
    heatCapacityRatio: 1.4,
    clearance: 1e-5,
    admission: 0,
    cutOff: 1e-4,
    release: 1e-4,
    compression: 0,
  };

  it('without expansion and compression is a rectangle', () => {
    expect(idealWork(turn)).toBeCloseTo(3e5 * 1e-4, 9);
  });

  it('takes what it sweeps, and what fills the clearance, warmed by the work done on it', () => {
    expect(idealAir({ ...turn, clearance: 1e-15 })).toBeCloseTo(4e5 * 1e-4, 9);
    expect(idealAir(turn) - 4e5 * 1e-4).toBeCloseTo((3e5 * 1e-5) / 1.4, 9);
  });

  it('with full compression fills nothing', () => {
    const full = 1e-5 * (4 ** (1 / 1.4) - 1);
    expect(idealAir({ ...turn, compression: full })).toBeCloseTo(4e5 * 1e-4, 9);
  });

  it('with full expansion gives the most for its air', () => {
    const fully = { ...turn, clearance: 1e-15, release: 1e-4 * 4 ** (1 / 1.4) };
    // Enthalpy drop of isentropic expansion, as a share of what p V can give: any thermodynamics text.
    const drop = (1.4 / 0.4) * (1 - 4 ** (-0.4 / 1.4));
    expect(idealWork(fully) / idealAir(fully)).toBeCloseTo(drop, 9);
  });
});

describe('an engine that squeezes much: the ball valve of the chestnut drum', () => {
  const spec = scenario('chestnut-drum-ball-valve');
  const result = runEngine(spec);
  const cycle = settledOf(result);

  it('is not told to lessen its clearance, which costs work and at last stops it', () => {
    expect(cycle.air.clearanceShare).toBeGreaterThan(0.5);
    expect(fillingOfClearance(cycle, result)).toBeUndefined();
    const smaller = settledOf(runEngine(withClearance(spec, 0.8)));
    expect(airPerWork(smaller)).toBeGreaterThan(airPerWork(cycle));
    expect(runEngine(withClearance(spec, 0.6)).outcome.kind).not.toBe('settled');
  });

  it('is told to enlarge it, which helps as foretold', () => {
    const { share, text } = squeezedClearance(cycle, result)!;
    expect(text).toContain('larger clearance');
    const larger = settledOf(runEngine(withClearance(spec, 1.2)));
    expect(larger.work.load / cycle.work.load - 1).toBeGreaterThan(0.7 * share);
    expect(airPerWork(larger)).toBeLessThan(airPerWork(cycle));
  });
});

describe('an engine that hardly squeezes', () => {
  it('is told to lessen its clearance, which saves air for the work', () => {
    const spec = scenario('fair-boat-oscillating');
    const result = runEngine(spec);
    const cycle = settledOf(result);
    expect(fillingOfClearance(cycle, result)?.text).toContain('a smaller clearance');
    const smaller = settledOf(runEngine(withClearance(spec, 0.8)));
    expect(airPerWork(smaller)).toBeLessThan(airPerWork(cycle));
    const foretold = prospectOf(cycle, result, ({ clearance }) => ({ clearance: 0.8 * clearance }))!;
    expectWithin(airPerWork(smaller) / airPerWork(cycle), foretold.airPerWork, 0.01);
  });
});

describe('an earlier cut-off', () => {
  const engine = (cutOff: number, torque: number): EngineSpec =>
    referenceSpec({
      valve_gear: spoolGear({ cutOff }),
      load: constantLoad(torque),
      flywheel: inertia(0.3),
      start: { crank_angle: 40 * DEGREE, hand_speed: 100 * RPM },
    });

  it('is advised where it saves air', () => {
    const now = runEngine(engine(0.5, 2.2));
    expect(lateCutOff(settledOf(now), now)?.text).toContain('earlier cut-off');
    expect(airPerWork(settledOf(runEngine(engine(0.45, 2.2))))).toBeLessThan(airPerWork(settledOf(now)));
  });

  it('is not advised to an engine that it would stop', () => {
    const now = runEngine(engine(0.5, 3));
    expect(lateCutOff(settledOf(now), now)).toBeUndefined();
    expect(runEngine(engine(0.45, 3)).outcome.kind).toBe('stalled');
  });
});
