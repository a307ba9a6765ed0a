/**
 * The quick settled answer is that of a long, closely followed start-up: within a thousandth in speed and two in air, on
 * every engine that is shipped, and in a bounded number of turns, steps and calls.
 */
import { describe, expect, it } from 'vitest';
import { runEngine } from '../../src/run/run-engine.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { constantLoad, referenceSpec } from '../support/reference-engine.ts';
import { shipped, shippedNames } from '../support/shipped.ts';

/** Upper limits, for the ball valve of the drum; turns of the others come to five. */
const MOST_TURNS = 6;
const MOST_CALLS = 3900;
const MEAN_CALLS = 2100;

const calls: number[] = [];

describe.each(shippedNames)('%s', (name) => {
  const spec = shipped(name);
  const quick = settledRunning(spec);
  const long = runEngine(spec);

  it('comes to the same end', () => {
    expect(quick.outcome.kind).toBe(long.outcome.kind);
    if (!long.settled) return;
    expect(Math.abs(quick.settled!.speed / long.settled.speed - 1)).toBeLessThan(1e-3);
    expect(Math.abs(quick.settled!.airMassFlow / long.settled.airMassFlow - 1)).toBeLessThan(2e-3);
  });

  it('in few turns and calls', () => {
    expect(quick.counters.turns).toBeLessThanOrEqual(MOST_TURNS);
    expect(quick.counters.derivativeCalls).toBeLessThanOrEqual(MOST_CALLS);
    calls.push(quick.counters.derivativeCalls);
  });
});

describe('engines that are shipped', () => {
  it('take few calls on the average', () => {
    expect(calls).toHaveLength(shippedNames.length);
    expect(calls.reduce((sum, count) => sum + count) / calls.length).toBeLessThanOrEqual(MEAN_CALLS);
  });
});

describe('an engine that all but comes to rest before its first top dead centre', () => {
  // Rough steps carry it over at a hundredth less pressure than it needs.
  const spec = shipped('cider-press.yaml');
  const { pressure } = spec.atmosphere;
  const atPressure = (share: number) =>
    settledRunning({
      ...spec,
      supply: { ...spec.supply, pressure: pressure + share * (spec.supply.pressure - pressure) },
    }).outcome.kind;

  it('is looked at again, closely', () => {
    expect(atPressure(0.602)).toBe('no-start');
    expect(atPressure(0.61)).toBe('settled');
  });
});

describe('an engine that gets going and stalls', () => {
  it('is spun on for real, to the same end', () => {
    const spec = referenceSpec({ load: constantLoad(3), start: { crank_angle: 0, hand_speed: 30 } });
    const quick = settledRunning(spec);
    const long = runEngine(spec);
    expect(long.outcome.kind).toBe('stalled');
    expect(quick.outcome.kind).toBe('stalled');
    expect(quick.settled).toBeUndefined();
  });
});
