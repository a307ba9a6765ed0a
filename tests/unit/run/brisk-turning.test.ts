/** Turning briskly, by angle from edge to edge; which edge is next; and where a motion begins. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import { nextMilestone } from '../../../src/run/motion.ts';
import { directions, GIVEN_UP, motionBy } from '../../support/motion-by-law.ts';
import { readerOf, type Asked } from '../../support/stepper-by-law.ts';

const TURN = 2 * Math.PI;

describe('turning briskly', () => {
  const brisk = { angle: 0.5, speed: 30 };

  it('goes by angle from edge to edge, and each top dead centre is a turn', () => {
    const { motion, asked } = motionBy({ stops: [0, 1, 3] }, brisk);
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(asked.map(({ to }) => to)).toEqual([1, 3, TURN, TURN + 1, TURN + 3, 2 * TURN]);
    expect(new Set(directions(asked))).toEqual(new Set([undefined]));
  });

  it('goes by time again once it is slower than half a radian a second', () => {
    const { motion, asked, y } = motionBy(
      {
        inAngle: (state, x) => {
          state[SLOT.speed] = 0.5;
          return { reason: 'event', x, event: 0 };
        },
        inTime: () => GIVEN_UP,
      },
      brisk,
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    expect(directions(asked)).toEqual([undefined, 1]);
    const state = y.slice();
    const left = [0.75, 0.25].map((speed) => {
      state[SLOT.speed] = speed;
      return asked[0]!.journey.events![0]!.value(0, readerOf(state));
    });
    expect(left).toEqual([0.25, -0.25]);
  });

  it('is no turn at a top dead centre where it has become slow, nor where none is new', () => {
    const { motion } = motionBy(
      {
        inAngle: (y, x) => {
          y[SLOT.crankAngle] = TURN;
          y[SLOT.speed] = 0.5;
          return { reason: 'event', x, event: 0 };
        },
        inTime: () => GIVEN_UP,
      },
      { angle: 6, speed: 1 },
    );
    expect(nextMilestone(motion)).toEqual({ kind: 'step-limit' });
    const again = motionBy({}, { angle: TURN, speed: 30 });
    expect(nextMilestone(again.motion)).toEqual({ kind: 'turn' });
    expect(again.y[SLOT.crankAngle]).toBe(2 * TURN);
  });

  it('ends when the time is over, and when the steps of the whole run are', () => {
    const late = motionBy(
      {
        stops: [0, 1, 3],
        inAngle: (y, x) => {
          y[SLOT.time]! += 3;
          y[SLOT.crankAngle] = x;
          return { reason: 'end', x };
        },
      },
      { ...brisk, longestTime: 5 },
    );
    expect(nextMilestone(late.motion)).toEqual({ kind: 'time over' });
    expect(late.asked).toHaveLength(2);
    const long = motionBy({ acceptedSteps: 2_000_001 }, brisk);
    expect(nextMilestone(long.motion)).toEqual({ kind: 'step-limit' });
    expect(long.asked).toEqual([]);
    const notYet = motionBy({ acceptedSteps: 2_000_000 }, brisk);
    expect(nextMilestone(notYet.motion)).toEqual({ kind: 'turn' });
  });
});

describe('the next edge', () => {
  const targetFrom = (angle: number, speed: number, stops: readonly number[]): number => {
    const { motion, asked, y } = motionBy(
      { stops, inTime: () => GIVEN_UP, inAngle: () => GIVEN_UP },
      { angle, speed },
    );
    nextMilestone(motion);
    const [{ direction, journey, to }] = asked as [Asked];
    if (direction === undefined) return to;
    return angle + direction * journey.events![0]!.value(0, readerOf(y));
  };

  it.each([
    { angle: 0.5, speed: 9, edge: 1 },
    { angle: 1, speed: 9, edge: 3 },
    { angle: 1 - 1e-10, speed: 9, edge: 3 },
    { angle: 1 - 1e-8, speed: 9, edge: 1 },
    { angle: 3.5, speed: 9, edge: TURN },
    { angle: TURN, speed: 9, edge: TURN + 1 },
    { angle: -0.5, speed: 9, edge: 0 },
    { angle: -4, speed: 9, edge: 3 - TURN },
    { angle: 0.5, speed: 0.8, edge: 1 },
    { angle: 0.5, speed: -9, edge: 0 },
    { angle: 2, speed: -9, edge: 1 },
    { angle: 6, speed: -9, edge: 3 },
    { angle: 1 + 1e-10, speed: -9, edge: 0 },
    { angle: 0, speed: -9, edge: 3 - TURN },
    { angle: TURN + 0.5, speed: -9, edge: TURN },
  ])('from $angle rad at $speed rad/s is at $edge', ({ angle, speed, edge }) => {
    expect(targetFrom(angle, speed, [0, 1, 3])).toBeCloseTo(edge, 12);
  });

  it('of an engine with top dead centre alone is that, even a hair before it', () => {
    expect(targetFrom(TURN - 1e-10, 9, [0])).toBeCloseTo(2 * TURN, 8);
    expect(targetFrom(1e-10, -9, [0])).toBeCloseTo(-TURN, 8);
  });
});

describe('a motion about to begin', () => {
  it.each([
    { angle: 1, announced: 0 },
    { angle: -1, announced: -TURN },
    { angle: TURN + 1, announced: TURN },
  ])('at $angle rad has announced $announced', ({ angle, announced }) => {
    const { motion } = motionBy({}, { angle, time: 3 });
    expect(motion.announced).toBeCloseTo(announced, 12);
    expect(motion.startAngle).toBe(angle);
    expect(motion.watch).toEqual({ since: 3, angle, lastProgress: 0 });
  });
});
