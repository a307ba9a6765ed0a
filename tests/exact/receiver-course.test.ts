/**
 * The course of a receiver against closed forms: with an exponent of one the delivery falls in a straight line, and the
 * pressure then goes as an exponential; and the limits of nothing, of very much, and of exactly enough.
 */
import { describe, expect, it } from 'vitest';
import { courseOf } from '../../src/run/supply/course.ts';
import { endState } from '../../src/run/supply/end-state.ts';
import { legTo, type Leg } from '../../src/run/supply/leg.ts';
import { settlingLeg } from '../../src/run/supply/settling-leg.ts';
import { gain, type Shed } from '../../src/run/supply/shed.ts';
import { receiverForTime, startsPerHour, sufficient } from '../../src/run/supply/sizing.ts';
import { supplyTrace } from '../../src/run/supply/supply-trace.ts';
import { compressorWith } from '../support/compressors.ts';
import { expectWithin } from '../support/expect-within.ts';

const BAR = 1e5;

/** 50 litres; delivery falls from 2.4 g/s at nothing by 0.1 g/s a bar; the engine takes 1 g/s. */
const shed: Shed = {
  massPerPascal: 0.05 / (287.05 * 288.15),
  cutIn: 7 * BAR,
  cutOut: 9 * BAR,
  setPressure: 4 * BAR,
  stallPressure: 2 * BAR,
  delivery: (p) => 2.4e-3 - 1e-9 * p,
  demand: () => 1e-3,
};

/** Time from p₀ to p₁ when dp/dt = (p* − p)/T: T ln((p* − p₀)/(p* − p₁)). */
const exponential = (from: number, to: number, towards: number): number =>
  (shed.massPerPascal / 1e-9) * Math.log((towards - from) / (towards - to));

const unaccounted = ({ stored, delivered, taken }: Leg): number =>
  Math.abs(stored - delivered + taken) / (delivered + taken);

describe('a receiver with a delivery that falls in a straight line', () => {
  it('cycles in the time and with the duty of the closed form', () => {
    const { end, duty, period } = courseOf(shed, 0);
    const resting = (shed.massPerPascal * 2 * BAR) / 1e-3;
    const filling = exponential(7 * BAR, 9 * BAR, 14 * BAR);
    expect(end).toEqual({ kind: 'cycles' });
    expectWithin(period!, resting + filling, 1e-9);
    expectWithin(duty, filling / (resting + filling), 1e-9);
  });

  it('settles between cut-in and cut-out where it gives just what is taken, along the exponential', () => {
    const busy = { ...shed, demand: () => 1.6e-3 };
    expect(courseOf(busy, 0)).toMatchObject({ end: { kind: 'settles' }, duty: 1 });
    const end = endState(busy);
    expectWithin(end.kind === 'settles' ? end.pressure : NaN, 8 * BAR, 1e-11);
    const leg = settlingLeg(busy, 7 * BAR, 8 * BAR, 600);
    const { time, pressure } = leg.rows();
    expect(time.at(-1)).toBe(600);
    for (const [i, t] of time.entries())
      expectWithin(pressure[i]!, 8 * BAR - BAR * Math.exp((-1e-9 * t) / shed.massPerPascal), 1e-9);
  });

  it('falls past the set pressure, and on to where the engine stops', () => {
    const hungry = { ...shed, demand: () => 2.3e-3 };
    const resting = (shed.massPerPascal * 2 * BAR) / 2.3e-3;
    const course = courseOf(hungry, 0);
    expect(course.end).toEqual({ kind: 'stops' });
    expectWithin(course.timeToSag!, resting + exponential(7 * BAR, 4 * BAR, 1 * BAR), 1e-9);
    expectWithin(course.timeToStop!, resting + exponential(7 * BAR, 2 * BAR, 1 * BAR), 1e-9);
  });

  it('settles below the set pressure when the slower engine takes less', () => {
    // In proportion to pressure below 4 bar: 2.4 − 0.1 p = 0.56 p, p in bar.
    const sagging = { ...shed, demand: (p: number) => 0.56e-8 * Math.min(p, 4 * BAR) };
    const course = courseOf(sagging, 4000);
    const expected = 2.4e-3 / 0.66e-8;
    expectWithin(course.end.kind === 'settles' ? course.end.pressure : NaN, expected, 1e-11);
    const last = course.legs.at(-1)!;
    const settled = last.rows().pressure.at(-1)!;
    expectWithin(settled, expected, 1e-9);
    expect(Math.abs(gain(sagging, settled))).toBeLessThan(1e-12);
    expectWithin(course.timeToSag! + last.duration, 4000, 1e-12);
  });

  it('creeps down to a set pressure that lies a hair above where it would settle', () => {
    // 2.4 − 0.1 p = 2 + 1e-7, p in bar: a millionth of a bar below 4.
    const creeping = { ...shed, demand: () => 2e-3 + 1e-10 };
    expectWithin(
      legTo(creeping, true, 7 * BAR, 4 * BAR).duration,
      exponential(7 * BAR, 4 * BAR, 4 * BAR - 0.1),
      1e-9,
    );
  });

  it('keeps its books on every leg', () => {
    for (const demand of [1e-3, 1.6e-3, 2.3e-3])
      for (const leg of courseOf({ ...shed, demand: () => demand }, 900).legs)
        expect(unaccounted(leg)).toBeLessThan(1e-9);
  });
});

describe('at the limits', () => {
  it('a compressor that gives nothing only lets the engine run down', () => {
    const course = courseOf({ ...shed, delivery: () => 0 }, 0);
    expect(course).toMatchObject({ end: { kind: 'stops' }, duty: 1 });
    expectWithin(course.timeToSag!, (shed.massPerPascal * 5 * BAR) / 1e-3, 1e-9);
    expectWithin(course.timeToStop!, (shed.massPerPascal * 7 * BAR) / 1e-3, 1e-9);
  });

  it('a huge compressor hardly runs at all', () => {
    const course = courseOf({ ...shed, delivery: () => 10 }, 0);
    expect(course.end.kind).toBe('cycles');
    expectWithin(course.duty, 1e-4, 1e-3);
  });

  it('a tiny receiver changes the period and not the duty', () => {
    const tiny = courseOf({ ...shed, massPerPascal: shed.massPerPascal * 1e-6 }, 0);
    expectWithin(tiny.period!, 1e-6 * courseOf(shed, 0).period!, 1e-9);
    expectWithin(tiny.duty, courseOf(shed, 0).duty, 1e-9);
  });

  it('exactly enough at the set pressure never sags', () => {
    const course = courseOf({ ...shed, demand: () => 2e-3 }, 0);
    expect(course.end.kind).toBe('settles');
    expect(course.timeToSag).toBeUndefined();
  });

  it('cut-in at the set pressure sags as soon as the compressor comes on, if it gives too little', () => {
    const course = courseOf({ ...shed, cutIn: 4 * BAR, demand: () => 2.3e-3 }, 0);
    expectWithin(course.timeToSag!, (shed.massPerPascal * 5 * BAR) / 2.3e-3, 1e-9);
  });

  it('an engine that needs more than cut-in stops while the compressor rests', () => {
    const course = courseOf({ ...shed, stallPressure: 8 * BAR }, 0);
    expect(course).toMatchObject({ end: { kind: 'stops' }, duty: 0 });
    expectWithin(course.timeToStop!, (shed.massPerPascal * BAR) / 1e-3, 1e-9);
    expect(course.timeToSag).toBeUndefined();
  });

  it('a leg that leads nowhere in ten years has no end', () => {
    const idle = legTo({ ...shed, demand: () => 1e-15 }, false, 9 * BAR, 7 * BAR);
    expect(idle.duration).toBe(Infinity);
    expect(idle.rows()).toEqual({ time: [0, Infinity], pressure: [9 * BAR, 9 * BAR] });
  });

  it('a leg on which delivery and demand meet has no end', () => {
    expect(legTo({ ...shed, demand: () => 1.6e-3 }, true, 7 * BAR, 9 * BAR).duration).toBe(Infinity);
  });
});

describe('the compressor that suffices', () => {
  const compressor = compressorWith({
    free_air_delivery: 1e-3,
    receiver_volume: 0.05,
    cut_in: 7 * BAR,
    cut_out: 9 * BAR,
    duty_rating: 0.5,
  });

  it('runs for just the share of time that it may', () => {
    const { freeAirDelivery } = sufficient(compressor, shed);
    const factor = freeAirDelivery / 1e-3;
    const { duty } = courseOf({ ...shed, delivery: (p) => factor * shed.delivery(p) }, 0);
    expectWithin(duty, 0.5, 1e-5);
  });

  it('of the same delivery at all pressures is demand over rating', () => {
    const steady = { ...shed, delivery: () => 0.7e-3 };
    expectWithin(sufficient(compressor, steady).freeAirDelivery, (1e-3 / 0.7 / 0.5) * 1, 1e-5);
  });

  it('starts just as often as it may with the receiver that is named beside it', () => {
    const { freeAirDelivery, receiver } = sufficient(compressor, shed);
    const factor = freeAirDelivery / 1e-3;
    const course = courseOf(
      {
        ...shed,
        massPerPascal: (shed.massPerPascal * receiver!) / compressor.receiver_volume,
        delivery: (p) => factor * shed.delivery(p),
      },
      0,
    );
    expectWithin(startsPerHour(course), compressor.starts_per_hour, 1e-6);
  });

  it('lets any receiver do where the supply never sags', () => {
    expect(receiverForTime(compressor, courseOf(shed, 0), 600)).toBeUndefined();
  });

  it('that may run all the time need only hold the set pressure, and has no use for a receiver', () => {
    const tireless = sufficient({ ...compressor, duty_rating: 1 }, shed);
    expectWithin(tireless.freeAirDelivery, 1e-3 / 2, 1e-9);
    expect(tireless.receiver).toBeUndefined();
  });
});

it.each([5, 4])('an engine that stops at %d bar, before the supply can sag, is not said to sag', (stall) => {
  const hungry = { ...shed, stallPressure: stall * BAR, demand: () => 2.3e-3 };
  const { timeToSag, timeToStop } = courseOf(hungry, 0);
  expect(timeToSag).toBeUndefined();
  const resting = (shed.massPerPascal * 2 * BAR) / 2.3e-3;
  expectWithin(timeToStop!, resting + exponential(7 * BAR, stall * BAR, 1 * BAR), 1e-9);
});

it('a thimble of a receiver settles in no time, and stands there for an hour', () => {
  const thimble = { ...shed, massPerPascal: 1e-7 * shed.massPerPascal, demand: () => 1.6e-3 };
  const leg = settlingLeg(thimble, 7 * BAR, 8 * BAR, 3600);
  const { time, pressure } = leg.rows();
  expect(time.at(-1)).toBe(3600);
  for (const p of pressure.slice(time.findIndex((t) => t > 1))) expectWithin(p, 8 * BAR, 2e-9);
  expectWithin(leg.taken, 1.6e-3 * 3600, 1e-9);
});

describe('a leg that begins where it ends', () => {
  it('or as good as there, is none', () => {
    expect(legTo(shed, false, 7 * BAR * (1 + 1e-10), 7 * BAR).duration).toBe(0);
    expect(legTo(shed, false, 7 * BAR * (1 + 1e-8), 7 * BAR).duration).toBeGreaterThan(0);
  });

  it('takes no time and moves no air', () => {
    const leg = legTo(shed, false, 7 * BAR, 7 * BAR);
    expect(leg).toMatchObject({ duration: 0, delivered: 0, taken: 0, stored: 0 });
    expect(leg.rows()).toEqual({ time: [0], pressure: [7 * BAR] });
  });

  it('is held where delivery and demand agree, for as long as is asked', () => {
    const leg = settlingLeg({ ...shed, demand: () => 1.6e-3 }, 8 * BAR, 8 * BAR, 600);
    expect(leg.duration).toBe(600);
    expectWithin(leg.delivered, 1.6e-3 * 600, 1e-12);
    expectWithin(leg.taken, 1.6e-3 * 600, 1e-12);
    expect(new Set(leg.rows().pressure)).toEqual(new Set([8 * BAR]));
  });
});

describe('the course over time', () => {
  const course = courseOf(shed, 0);
  const laws = { speed: (p: number) => p / BAR, supplyPressure: (p: number) => Math.min(p, 4 * BAR) };
  /** dp/dt while the compressor rests. */
  const fall = 1e-3 / shed.massPerPascal;

  it('repeats itself, and is cut off at the time asked for', () => {
    const resting = course.legs[0]!.duration;
    const until = 2 * course.period! + resting / 3;
    const { time, receiverPressure, supplyPressure, speed, compressorOn } = supplyTrace(course, until, laws);
    expect(time[0]).toBe(0);
    expect(time.at(-1)).toBe(until);
    expectWithin(receiverPressure.at(-1)!, 9 * BAR - (fall * resting) / 3, 1e-9);
    for (const [i, p] of receiverPressure.entries()) {
      expect(time[i]!).toBeGreaterThanOrEqual(time[i - 1] ?? 0);
      const since = time[i]! % course.period!;
      if (compressorOn[i] === 0 && since <= resting) expectWithin(p, 9 * BAR - fall * since, 1e-8);
      expect([supplyPressure[i], speed[i]]).toEqual([4 * BAR, p / BAR]);
    }
    const starts = [...compressorOn].filter((on, i) => on === 1 && compressorOn[i - 1] === 0);
    expect(starts).toHaveLength(2);
  });

  it('is cut off between two rows on the line between them', () => {
    const [resting, filling] = course.legs as [Leg, Leg];
    const since = 0.4 * filling.duration;
    const { receiverPressure } = supplyTrace(course, resting.duration + since, laws);
    const expected = 14 * BAR - 7 * BAR * Math.exp((-1e-9 * since) / shed.massPerPascal);
    expectWithin(receiverPressure.at(-1)!, expected, 5e-5);
  });

  it('ends where the engine stops, with a last row at rest', () => {
    const course = courseOf({ ...shed, demand: () => 2.3e-3 }, 0);
    const { time, speed, receiverPressure } = supplyTrace(course, 1e6, laws);
    expectWithin(time.at(-1)!, course.timeToStop!, 1e-12);
    expectWithin(receiverPressure.at(-1)!, 2 * BAR, 1e-9);
    expect([...speed].filter((one) => one === 0)).toEqual([0]);
    expect(speed.at(-1)).toBe(0);
  });

  it('gives back over a period what it took', () => {
    const [resting, filling] = course.legs as [Leg, Leg];
    expectWithin(filling.stored, -resting.stored, 1e-9);
    expectWithin(filling.delivered, resting.taken + filling.taken, 1e-9);
  });
});
