/** The settled speed is the one that simply turning on would reach. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import type { EngineSpec } from '../../../src/parts/engine-description.ts';
import { nextMilestone } from '../../../src/run/motion.ts';
import { settle } from '../../../src/run/settle.ts';
import { measuredTurn, motionOf, settledSpeed, systemOf, turnSpeed } from '../../support/drive.ts';
import {
  constantLoad,
  DEGREE,
  discGear,
  growingLoad,
  referenceSpec,
} from '../../support/reference-engine.ts';

const start = { angle: 40 * DEGREE, speed: 0, longestTime: 200 };

/** Mean speed of the turn after so many plain turns. */
function speedAfter(spec: EngineSpec, turns: number): number {
  const system = systemOf(spec);
  const motion = motionOf(system, start);
  for (let i = 0; i < turns; i += 1) expect(nextMilestone(motion).kind).toBe('turn');
  return turnSpeed(measuredTurn(system, motion.y));
}

describe('the settled speed', () => {
  it.each([
    ['with spools', referenceSpec(), 300],
    ['with a disc', referenceSpec({ valve_gear: discGear() }), 100],
  ])(
    '%s is that after hundreds of plain turns',
    (_name, spec, turns) => {
      const settled = settledSpeed(systemOf(spec), start);
      expect(Math.abs(settled / speedAfter(spec, turns) - 1)).toBeLessThan(1e-4);
    },
    60_000,
  );

  it('does not depend on the push', () => {
    const system = systemOf(referenceSpec());
    const pushed = settledSpeed(system, { ...start, angle: 0, speed: 60 });
    expect(Math.abs(pushed / settledSpeed(system, start) - 1)).toBeLessThan(1e-4);
  });
});

describe('settling', () => {
  it('keeps the state of the real spin-up from before it looks for the root', () => {
    const motion = motionOf(systemOf(referenceSpec()), start);
    const { end, spunUp } = settle(motion);
    expect(end).toEqual({ kind: 'settled' });
    expect(spunUp[SLOT.time]).toBe(motion.y[SLOT.time]!);
    expect(spunUp[SLOT.speed]).not.toBe(motion.y[SLOT.speed]);
    expect(Math.abs(spunUp[SLOT.speed]! / motion.y[SLOT.speed]! - 1)).toBeLessThan(0.02);
  });

  it('ends with the milestone of an engine that does not get that far', () => {
    const motion = motionOf(systemOf(referenceSpec({ load: constantLoad(40) })), start);
    const { end, spunUp } = settle(motion);
    expect(end).toEqual({ kind: 'rest' });
    expect(spunUp).toEqual(motion.y);
  });

  it('gives up an engine whose time is over', () => {
    const motion = motionOf(systemOf(referenceSpec({ load: growingLoad(0.5, 0.002) })), {
      ...start,
      longestTime: 1,
    });
    expect(settle(motion).end).toEqual({ kind: 'time over' });
  });
});
