/** Turning slowly: by time, with events at the next edge, at rest and where it becomes brisk; and whether it only creeps. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import { nextMilestone } from '../../../src/run/motion.ts';
import { directions, GIVEN_UP, motionBy, type Beginning } from '../../support/motion-by-law.ts';
import { readerOf, stepThrough, type Asked } from '../../support/stepper-by-law.ts';

const TURN = 2 * Math.PI;

describe('turning slowly', () => {
  const slow = { angle: 0.5, speed: 0.8 };

  it('goes by time, with events at the next edge, at rest and where it becomes brisk', () => {
    const { motion, asked, y } = motionBy({ stops: [0, 1, 3], inTime: () => GIVEN_UP }, slow);
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    const [{ direction, journey }] = asked as [Asked];
    expect(direction).toBe(1);
    const valuesAt = (angle: number, speed: number): number[] => {
      const state = y.slice();
      state[SLOT.crankAngle] = angle;
      state[SLOT.speed] = speed;
      return journey.events!.map((event) => event.value(0, readerOf(state)));
    };
    expect(valuesAt(0.75, 0.75).map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0.25, 0.75, 0.25]);
    // Speed zero is where it begins when it has broken away; a fall below is found.
    expect(valuesAt(0.5, 0)[1]).toBeGreaterThan(0);
    expect(valuesAt(0.5, -1e-8)[1]).toBeLessThan(0);
  });

  it('backwards, the same is seen in a mirror, and it never becomes brisk', () => {
    const { motion, asked, y } = motionBy(
      { stops: [0, 1, 3], inTime: () => GIVEN_UP },
      { angle: 0.5, speed: -3 },
    );
    nextMilestone(motion);
    const [{ direction, journey }] = asked as [Asked];
    expect(direction).toBe(-1);
    const values = journey.events!.map((event) => event.value(0, readerOf(y)));
    expect(values[0]).toBeCloseTo(0.5, 12);
    expect(values[1]).toBeCloseTo(3, 6);
    expect(values[2]).toBeGreaterThan(0);
  });

  it('is sent to the end of the ten seconds in which its progress is watched, or of the time there is', () => {
    const ends = (beginning: Beginning): number => {
      const { motion, asked } = motionBy({ inTime: () => GIVEN_UP }, { ...slow, ...beginning });
      nextMilestone(motion);
      return asked[0]!.to;
    };
    expect(ends({ time: 3 })).toBe(13);
    expect(ends({ time: 3, longestTime: 9 })).toBe(9);
  });

  it('has as many steps for one stretch as it is given, or more than any engine needs', () => {
    const { motion, asked } = motionBy({ inTime: () => GIVEN_UP }, slow);
    nextMilestone(motion);
    nextMilestone({ ...motion, stretchSteps: 17 });
    expect(asked[0]!.journey.stepLimit).toBeGreaterThanOrEqual(40_000);
    expect(asked[1]!.journey.stepLimit).toBe(17);
  });

  it('stands on the edge itself when it has come there, and goes on to the next', () => {
    const { motion, asked, y } = motionBy(
      {
        stops: [0, 1, 3],
        inTime: (state, x) => {
          if (asked.length > 3) return GIVEN_UP;
          state[SLOT.crankAngle] = [1, 3, TURN][asked.length - 1]! - 1e-13;
          return { reason: 'event', x, event: 0 };
        },
      },
      slow,
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(asked).toHaveLength(3);
    expect(y[SLOT.crankAngle]).toBe(TURN);
  });

  it('that has come to rest stands still, and the moment is marked', () => {
    const { motion, asked, marked } = motionBy(
      {
        inTime: (y, x, _journey, direction) => {
          if (direction === 0) return GIVEN_UP;
          y[SLOT.time] = 0.25;
          y[SLOT.speed] = -1e-9;
          return { reason: 'event', x, event: 1 };
        },
      },
      slow,
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(directions(asked)).toEqual([1, 0]);
    expect(marked).toEqual([0.25]);
  });

  it('goes by angle once it is brisk', () => {
    const { motion, asked, y, marked } = motionBy(
      {
        stops: [0, 1, 3],
        inTime: (state, x) => {
          state[SLOT.speed] = 1 - 1e-13;
          return { reason: 'event', x, event: 2 };
        },
        inAngle: () => GIVEN_UP,
      },
      slow,
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(directions(asked)).toEqual([1, undefined]);
    expect(asked[1]!.to).toBe(1);
    expect(y[SLOT.speed]).toBe(1);
    expect(marked).toEqual([]);
  });

  it('three turns backwards is turning backwards', () => {
    const { motion, asked } = motionBy(
      { inTime: (_y, x) => ({ reason: 'event', x, event: 0 }) },
      { angle: 0, speed: -2 },
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'backwards' });
    expect(asked).toHaveLength(3);
  });

  it('ends when the time is over', () => {
    const { motion, asked } = motionBy({}, { ...slow, longestTime: 4 });
    expect(nextMilestone(motion)).toEqual({ kind: 'time over' });
    expect(asked).toHaveLength(1);
  });

  it('shows its recorder the end of every step', () => {
    const { motion, noted, y } = motionBy(
      {
        inTime: (state, _to, { onStep }) => {
          const step = stepThrough(state, 0, 2);
          onStep!({ ...step, component: (i, x) => (i === SLOT.time ? x : state[i]!) });
          return GIVEN_UP;
        },
      },
      slow,
    );
    nextMilestone(motion);
    expect(noted).toEqual([2]);
    expect(y[SLOT.time]).toBe(0);
  });
});

describe('an engine that is pushed along by inches', () => {
  /** Progress [rad] in one window of ten seconds after the other. */
  function creepingBy(...progress: number[]) {
    return motionBy(
      {
        inTime: (y) => {
          if (progress.length === 0) return GIVEN_UP;
          y[SLOT.crankAngle]! += progress.shift()!;
          return undefined;
        },
      },
      { angle: 0.5, speed: 0.02 },
    );
  }

  it.each([
    { progress: [0.2, 0.2], end: 'creeps' },
    { progress: [-0.2, -0.2], end: 'creeps' },
    { progress: [0.2, 0.29], end: 'creeps' },
    { progress: [0.2, 0.31], end: 'step-limit' },
    { progress: [0.1, 0.16, 0.25, 0.39], end: 'step-limit' },
    { progress: [0.6, 0.49], end: 'creeps' },
    { progress: [0.6, 0.51], end: 'step-limit' },
    { progress: [0.2, 0], end: 'step-limit' },
  ])('creeps or not by its progress: $progress, $end', ({ progress, end }) => {
    const { motion, asked } = creepingBy(...progress);
    expect(nextMilestone(motion)).toEqual({ kind: end });
    expect(asked).toHaveLength(end === 'creeps' ? progress.length : progress.length + 1);
  });

  it('is not looked at before its ten seconds are over', () => {
    const { motion, y, asked } = motionBy(
      {
        stops: [0, 1, 1.2, 1.4],
        inTime: (state, x) => {
          if (asked.length > 3) return GIVEN_UP;
          state[SLOT.time]! += 3;
          return { reason: 'event', x, event: 0 };
        },
      },
      { angle: 0.9, speed: 0.02 },
    );
    motion.watch = { ...motion.watch, lastProgress: 1 };
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(y[SLOT.time]).toBe(9);
  });

  it('is watched anew once it has been brisk', () => {
    const { motion } = motionBy(
      {
        stops: [0, 1, 3],
        inAngle: (y, to) => {
          y[SLOT.crankAngle] = to;
          y[SLOT.time]! += 30;
          y[SLOT.speed] = 0.4;
          return { reason: 'event', x: to, event: 0 };
        },
        inTime: () => GIVEN_UP,
      },
      { angle: 0.5, speed: 5 },
    );
    motion.watch = { ...motion.watch, lastProgress: 1 };
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(motion.watch).toEqual({ since: 30, angle: 1, lastProgress: 0 });
  });
});
