/** What must hold for any engine on any receiver and compressor: more is never worse, and the books close. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Compressor } from '../../src/parts/compressor.ts';
import { compressorVerdict } from '../../src/run/compressor-verdict.ts';
import { shedOf } from '../../src/run/supply/shed.ts';
import { supplyTimeline, type SupplyTimeline } from '../../src/run/supply/timeline.ts';
import { compressorWith } from '../support/compressors.ts';
import { answersOf, plainLaw, type EngineLaw } from '../support/engine-by-law.ts';
import { expectWithin } from '../support/expect-within.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const BAR = 1e5;
const LITRE_PER_MINUTE = 1e-3 / 60;
const HOUR = 3600;
const spec = referenceSpec({ supply: { pressure: 4 * BAR } });

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Engines that take 0.3 to 3 times as much as the plain one, and compressors from far too small to ample. */
const cases = fc.record({
  appetite: real(0.3, 3),
  stall: real(2.05, 3.6),
  delivery: real(5, 900),
  volume: real(2e-3, 0.5),
  cutIn: real(4, 8),
  band: real(0.3, 4),
  clearance: real(0, 0.08),
  rating: real(0.1, 0.95),
});
type Case = typeof cases extends fc.Arbitrary<infer C> ? C : never;

/** One for each way it can end. */
const plenty: Case = {
  appetite: 1,
  stall: 2.2,
  delivery: 300,
  volume: 0.05,
  cutIn: 6,
  band: 2,
  clearance: 0.05,
  rating: 0.5,
};
const busy: Case = { ...plenty, delivery: 110 };
const little: Case = { ...plenty, delivery: 60 };
const none: Case = { ...plenty, delivery: 10 };

/** Sags within one step of the integrator. */
const soon: Case = {
  appetite: 0.3,
  stall: 2.05,
  delivery: 24.410093209678227,
  volume: 0.49902636718726306,
  cutIn: 6.540660060710024,
  band: 3.018770098956099,
  clearance: 0.07998481154441832,
  rating: 0.1,
};

/** Comes to cut-in with its mass a rounding above it, which steps as short as the rest of the way do not change. */
const hovering: Case = {
  appetite: 0.3,
  stall: 2.05,
  delivery: 5,
  volume: 0.002,
  cutIn: 4,
  band: 0.3,
  clearance: 0,
  rating: 0.1,
};

/** Cuts in a hair above the pressure that is to be held, so that a step ends on the pressure itself. */
const brushing: Case = { ...plenty, appetite: 0.3, stall: 2.05, cutIn: 4.0000001, band: 4, rating: 0.1 };

const lawOf = ({ appetite, stall }: Case): EngineLaw => ({
  ...plainLaw,
  stall: stall * BAR,
  airMassFlow: (p) => appetite * plainLaw.airMassFlow(p),
});

const compressorOf = ({ delivery, volume, cutIn, band, clearance, rating }: Case): Compressor =>
  compressorWith({
    free_air_delivery: delivery * LITRE_PER_MINUTE,
    receiver_volume: volume,
    cut_in: cutIn * BAR,
    cut_out: (cutIn + band) * BAR,
    clearance,
    duty_rating: rating,
  });

function timelineOf(of: Case, changes: Partial<Compressor> = {}): SupplyTimeline {
  const compressor = { ...compressorOf(of), ...changes };
  const timeline = supplyTimeline({ ...spec, compressor }, compressor, HOUR, answersOf(lawOf(of)).answer);
  if (!timeline.runs) throw new Error('it must run');
  return timeline;
}

const lasts = ({ timeToSag }: SupplyTimeline): number => timeToSag ?? Infinity;

describe('minutes of supply', () => {
  it('close their books, end in balance, and agree with the verdict of a run', () => {
    const ends = new Set<string>();
    fc.assert(
      fc.property(cases, (of) => {
        const compressor = compressorOf(of);
        const law = lawOf(of);
        const { end, ...timeline } = timelineOf(of);
        ends.add(end.kind + (timeline.timeToSag === undefined ? '' : ', sagging'));
        expect(timeline.ledgerResidual).toBeLessThan(1e-9);
        if (end.kind === 'settles') {
          const shed = shedOf(spec, compressor, { demand: () => 0, stallPressure: 0 });
          const takes = law.airMassFlow(Math.min(end.pressure, 4 * BAR));
          // Interpolated where the engine stops before an answer could be had just there.
          expectWithin(shed.delivery(end.pressure), takes, 1e-3);
        }
        const verdict = compressorVerdict(compressor, spec, law.airMassFlow(4 * BAR));
        expect(verdict.keepsUp).toBe(timeline.timeToSag === undefined);
        if (timeline.timeToSag !== undefined)
          expectWithin(verdict.minutesUntilSag! * 60, timeline.timeToSag, 1e-9);
        expectWithin(verdict.duty, timeline.duty, 1e-9);
        expectWithin(verdict.demandAnr, timeline.demandAnr, 1e-12);
      }),
      { numRuns: 40, examples: [[plenty], [busy], [little], [none], [soon], [hovering]] },
    );
    expect([...ends].sort()).toEqual(['cycles', 'settles', 'settles, sagging', 'stops, sagging']);
  });

  it('never grow shorter with more delivery, and grow in proportion to the receiver', () => {
    fc.assert(
      fc.property(cases, real(1, 3), (of, more) => {
        const as = timelineOf(of);
        const bigger = timelineOf({ ...of, delivery: of.delivery * more });
        expect(lasts(bigger)).toBeGreaterThanOrEqual(lasts(as) * (1 - 1e-9));
        expect(bigger.duty).toBeLessThanOrEqual(as.duty * (1 + 1e-9));
        const roomier = timelineOf({ ...of, volume: of.volume * more });
        if (as.timeToSag !== undefined) expectWithin(roomier.timeToSag!, more * as.timeToSag, 1e-6);
        expectWithin(roomier.duty, as.duty, 1e-6);
      }),
      { numRuns: 12 },
    );
  });

  it('say what suffices: with that compressor the duty is in the rating, and the starts in what is allowed', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { sufficient, facts } = timelineOf(of);
        const after = timelineOf(of, {
          free_air_delivery: sufficient.freeAirDelivery * (1 + 1e-5),
          receiver_volume: sufficient.receiver ?? of.volume,
        });
        expect(after.timeToSag).toBeUndefined();
        expect(after.duty).toBeLessThanOrEqual(facts.compressor.duty_rating + 1e-3);
        expect(after.startsPerHour).toBeLessThanOrEqual(facts.compressor.starts_per_hour * 1.01);
      }),
      { numRuns: 12 },
    );
  });

  it('say how large a receiver lasts as long as is wanted', () => {
    fc.assert(
      fc.property(cases, real(0.1, 0.9), (of, share) => {
        // Less than it takes at the set pressure, so that it sags.
        const delivery = (share * of.appetite * plainLaw.airMassFlow(4 * BAR)) / 1.3 / LITRE_PER_MINUTE;
        const { receiverForTime } = timelineOf({ ...of, delivery, clearance: 0 });
        const after = timelineOf({ ...of, delivery, clearance: 0 }, { receiver_volume: receiverForTime! });
        expectWithin(after.timeToSag!, HOUR, 1e-6);
      }),
      { numRuns: 8, examples: [[brushing, 0.1]] },
    );
  });
});

describe('the trace of an hour', () => {
  it('never goes back in time, stays between cut-out and where it ends, and has the regulator hold', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { trace, facts, end } = timelineOf(of);
        const { time, receiverPressure, supplyPressure, speed } = trace;
        expect(time[0]).toBe(0);
        expect(receiverPressure[0]).toBe(facts.compressor.cut_out);
        expect(time.every((t, i) => i === 0 || t >= time[i - 1]!)).toBe(true);
        expect(receiverPressure.every((p) => p <= facts.compressor.cut_out * (1 + 1e-9))).toBe(true);
        expect(supplyPressure.every((p, i) => p === Math.min(4 * BAR, receiverPressure[i]!))).toBe(true);
        const last = time.at(-1)!;
        if (end.kind === 'stops' && end.time <= HOUR) {
          expectWithin(last, end.time, 1e-12);
          expect(speed.at(-1)).toBe(0);
        } else if (time.length < 20_000) expectWithin(last, HOUR, 1e-12);
      }),
      { numRuns: 12 },
    );
  });

  it('reaches the speed that can be kept up', () => {
    const { end, trace } = timelineOf({ ...little, volume: 0.03 });
    if (end.kind !== 'settles') throw new Error(end.kind);
    expectWithin(trace.speed.at(-1)!, end.speed, 1e-5);
    expectWithin(end.speed, plainLaw.speed(end.pressure), 1e-5);
  });
});

it('an engine that does not run on a full receiver has no minutes', () => {
  const compressor = compressorWith({
    free_air_delivery: 1e-3,
    receiver_volume: 0.05,
    cut_in: 6e5,
    cut_out: 8e5,
  });
  const none = supplyTimeline(spec, compressor, HOUR, answersOf({ ...plainLaw, stall: 5e5 }).answer);
  expect(none).toMatchObject({ runs: false, title: spec.title, outcome: { kind: 'stalled' } });
});

describe('behind a regulator that droops', () => {
  const regulator = {
    inlet_pressure: 8e5,
    sonic_conductance: 1e-8,
    critical_pressure_ratio: 0.3,
    droop: 5e4,
  };
  const drooping = referenceSpec({ supply: { pressure: 4e5, regulator } });
  const compressor = compressorWith({
    free_air_delivery: 60 * LITRE_PER_MINUTE,
    receiver_volume: 0.05,
    cut_in: 6e5,
    cut_out: 8e5,
  });
  // Slower already while the receiver falls from cut-out, and much slower below the set pressure.
  const law: EngineLaw = {
    stall: 2.5e5,
    speed: (p) => 20 + (5 * p) / BAR,
    airMassFlow: (p) => 1e-3 * Math.min(1.6, p / 5e5),
  };
  const { answer, asked } = answersOf(law);
  const timeline = supplyTimeline(drooping, compressor, HOUR, answer);
  if (!timeline.runs) throw new Error('it must run');

  it('the engine is asked for its answers from cut-out down, with the regulator set as it is', () => {
    expect(asked[0]!.supply).toMatchObject({ pressure: 4e5, regulator: { inlet_pressure: 8e5 } });
    expect(asked.every(({ supply }) => supply.pressure === 4e5)).toBe(true);
  });

  it('the supply pressure stands below the set pressure, by less than the droop while there is enough', () => {
    const { supplyPressure, receiverPressure } = timeline.trace;
    for (const [i, p] of supplyPressure.entries()) {
      expect(p).toBeLessThan(Math.min(4e5, receiverPressure[i]!));
      if (receiverPressure[i]! > 5e5) expect(p).toBeGreaterThan(3.5e5);
    }
    expect(timeline.trace.speed[0]).toBe(60);
  });

  it('the pressure it sags to is where delivery and demand meet', () => {
    if (timeline.end.kind !== 'settles') throw new Error(timeline.end.kind);
    const shed = shedOf(drooping, compressor, { demand: () => 0, stallPressure: 0 });
    expectWithin(shed.delivery(timeline.end.pressure), law.airMassFlow(timeline.end.pressure), 1e-4);
  });
});
