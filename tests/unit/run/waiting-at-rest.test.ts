/** A crank at rest: how long it waits, when that is for good, and when it breaks away. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { nextMilestone } from '../../../src/run/motion.ts';
import { torqueBalance } from '../../../src/run/torque-balance.ts';
import { systemOf } from '../../support/drive.ts';
import { idealEngine } from '../../support/ideal-engine.ts';
import {
  compressCylinder,
  CYLINDER,
  directions,
  fillChest,
  GIVEN_UP,
  motionBy,
  tightSystem,
} from '../../support/motion-by-law.ts';
import { DEGREE } from '../../support/reference-engine.ts';
import { readerOf, type Asked } from '../../support/stepper-by-law.ts';

const { slots } = tightSystem;

describe('waiting at rest', () => {
  it('looks again ever more rarely, once a second at last, until the time is over', () => {
    const { motion, asked, y } = motionBy({}, { time: 1, longestTime: 5.5 });
    expect(nextMilestone(motion)).toEqual({ kind: 'time over' });
    const spans = asked.map(({ from, to }) => Math.round(1e6 * (to - from)) / 1e6);
    expect(spans).toEqual([0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1, 1, 1, 0.24]);
    expect(new Set(directions(asked))).toEqual(new Set([0]));
    expect(y[SLOT.time]).toBe(5.5);
  });

  it('is over at once when the time is', () => {
    const { motion, asked } = motionBy({}, { time: 5, longestTime: 5 });
    expect(nextMilestone(motion)).toEqual({ kind: 'time over' });
    expect(asked).toEqual([]);
  });

  it('is rest for good once the chest is full and nothing builds up', () => {
    const { motion, asked, y } = motionBy({}, { angle: 120 * DEGREE });
    fillChest(y);
    expect(nextMilestone(motion)).toEqual({ kind: 'rest' });
    expect(asked).toHaveLength(1);
  });

  it('goes on while the chest still empties or fills, however slowly the torque builds up', () => {
    for (const share of [0.9, 1.1]) {
      const { motion, y } = motionBy({}, { angle: 120 * DEGREE, longestTime: 5 });
      fillChest(y, share);
      expect(nextMilestone(motion)).toEqual({ kind: 'time over' });
    }
  });

  /** The cylinder filling at a steady rate, such that so many seconds are missing to break-away. */
  function fillingFor(seconds: number) {
    const first = initialState(tightSystem, 120 * DEGREE, 0);
    const missingAt = (factor: number): number => {
      const y = first.slice();
      compressCylinder(y, factor);
      const { applied, holding } = torqueBalance(tightSystem, y);
      return holding - applied;
    };
    const perUnit = missingAt(1) - missingAt(2);
    const law = {
      inTime: (y: Float64Array, to: number, _journey: unknown, direction: number) => {
        if (direction !== 0) return GIVEN_UP;
        for (const slot of [slots.mass(CYLINDER), slots.energy(CYLINDER)])
          y[slot] = first[slot]! * (1 + (to / seconds) * (missingAt(1) / perUnit));
        return undefined;
      },
    };
    const made = motionBy(law, { angle: 120 * DEGREE });
    fillChest(made.y);
    return made;
  }

  it('is rest for good when the missing torque would take more than a minute to build up', () => {
    const { motion, asked } = fillingFor(62);
    expect(nextMilestone(motion)).toEqual({ kind: 'rest' });
    expect(asked).toHaveLength(1);
  });

  it('goes on for less than a minute, and breaks away once the push is greater than what holds', () => {
    const { motion, asked, y } = fillingFor(58);
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(asked.at(-1)!.direction).toBe(1);
    expect(asked.slice(0, -1).every(({ direction }) => direction === 0)).toBe(true);
    expect(y[SLOT.time]).toBeGreaterThan(58);
    expect(y[SLOT.time]).toBeLessThan(60);
  });

  it('watches for break-away: an event that is above zero while more holds than pushes, either way', () => {
    const { motion, asked, y } = motionBy(
      {
        inTime: (_y, x, _journey, direction) =>
          direction === 0 ? { reason: 'event', x, event: 0 } : GIVEN_UP,
      },
      { angle: 120 * DEGREE },
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(directions(asked)).toEqual([0, 1]);
    const [{ journey }] = asked as [Asked];
    const before = y.slice();
    for (const factor of [0.01, 1, 3]) {
      const state = y.slice();
      compressCylinder(state, factor);
      const { applied, holding } = torqueBalance(tightSystem, state);
      const left = journey.events![0]!.value(0, readerOf(state));
      expect(left).toBeCloseTo(holding - Math.abs(applied), 7);
      expect(left).toBeGreaterThan(holding - Math.abs(applied));
    }
    expect(y).toEqual(before);
  });

  it('does not break away where nothing pushes, though nothing holds either', () => {
    const { motion, asked } = motionBy({}, { angle: 0, longestTime: 1 }, systemOf(idealEngine({})));
    expect(['rest', 'time over']).toContain(nextMilestone(motion).kind);
    expect(new Set(directions(asked))).toEqual(new Set([0]));
  });

  it('breaks away backwards where the air pushes that way', () => {
    const { motion, asked, y } = motionBy({ inTime: () => GIVEN_UP }, { angle: -60 * DEGREE });
    compressCylinder(y, 4);
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(directions(asked)).toEqual([-1]);
  });

  it('asks for a little more torque each time it stops again on the spot, and forgets that elsewhere', () => {
    const margins: number[] = [];
    const moves = [0, 0, 0, 1e-6, 0];
    const { motion } = motionBy(
      {
        inTime: (y, x, { events }, direction) => {
          if (direction === 0) {
            const { applied, holding } = torqueBalance(tightSystem, y);
            margins.push((events![0]!.value(x, readerOf(y)) + Math.abs(applied)) / holding - 1);
            return margins.length > 5 ? GIVEN_UP : { reason: 'event', x, event: 0 };
          }
          y[SLOT.crankAngle]! += moves.shift()!;
          return { reason: 'event', x, event: 1 };
        },
      },
      { angle: 120 * DEGREE },
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    const rounded = margins.map((margin) => Math.round(margin / 1e-9));
    expect(rounded).toEqual([1, 4, 16, 64, 1, 4]);
  });
});
