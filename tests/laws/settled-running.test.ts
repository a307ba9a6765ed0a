/**
 * The quick settled answer is that of a long, closely followed start-up: within a thousandth in speed and two in air, on
 * every engine that is shipped, and in a bounded number of turns, steps and calls.
 */
import { describe, expect, it } from 'vitest';
import { runEngine } from '../../src/run/run-engine.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { constantLoad, referenceSpec } from '../support/reference-engine.ts';
import { shipped, shippedNames } from '../support/shipped.ts';

/** Upper limits; the hay winch has four working ends. */
const MOST_TURNS = 8;
const MOST_CALLS = 5100;

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
