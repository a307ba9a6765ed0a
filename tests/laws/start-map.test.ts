/** The start map says what runs from those places say. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../src/model/engine.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { startMap } from '../../src/run/start-map.ts';
import { torqueCurve } from '../../src/run/torque-curve.ts';
import { referenceSpec } from '../support/reference-engine.ts';

function mapOf(spec: EngineSpec, count: number) {
  const engine = buildEngine(spec);
  const settledSpeed = settledRunning(spec).settled?.speed;
  return startMap({ engine, settledSpeed, curve: torqueCurve(engine) }, count);
}

describe('the start map of a single-acting engine', () => {
  const spec = referenceSpec();
  const map = mapOf(spec, 12);

  it('tells unaided starts as runs from there do', () => {
    for (const { crankAngle, startsUnaided } of map.positions.filter((_, i) => i % 3 === 1)) {
      const start = { crank_angle: crankAngle, hand_speed: 0 };
      expect(runEngine({ ...spec, start }).outcome.kind === 'settled').toBe(startsUnaided);
    }
  });

  it('knows places from where it starts, and a push for every other', () => {
    expect(map.unaidedShare).toBeGreaterThan(0.05);
    expect(map.unaidedShare).toBeLessThan(0.6);
    for (const { startsUnaided, push, secondsToSpeed } of map.positions) {
      expect(startsUnaided ? push === 0 : push! > 0).toBe(true);
      expect(secondsToSpeed).toBeGreaterThan(0);
      expect(secondsToSpeed).toBeLessThan(60);
    }
  });

  it('asks for the harder push the longer the way to the next admission', () => {
    const [after, before] = [4, 10].map((i) => map.positions[i]!.push!);
    expect(after).toBeGreaterThan(before!);
  });
});

describe('the start map', () => {
  it('of an engine without a settled speed is empty of starts', () => {
    const engine = buildEngine(referenceSpec());
    const map = startMap({ engine, settledSpeed: undefined, curve: torqueCurve(engine) }, 8);
    expect(map.unaidedShare).toBe(0);
    expect(map.positions.every(({ push }) => push === undefined)).toBe(true);
  });
});
