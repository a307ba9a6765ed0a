/**
 * A 95 % interval is one that holds the truth in 95 of 100 cases: readings are made up from a known truth with noise and
 * the steps of an instrument, 500 times each, and the truth has to lie within the interval 90 to 99 % of the time.
 */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { pressureThroughOrifice } from '../../src/gas/orifice-decay.ts';
import { pressureThroughGap } from '../../src/gas/pressure-decay.ts';
import { coastFit } from '../../src/measure/coast-fit.ts';
import { decayFits, shapeOf } from '../../src/measure/decay-fit.ts';
import { halfWidth, readingError } from '../../src/measure/interval.ts';
import { pumpUpFit } from '../../src/measure/pump-up-fit.ts';
import { leastSquares } from '../../src/numerics/least-squares.ts';
import { student95 } from '../../src/numerics/student.ts';
import { noise, stepped, type Noise } from '../support/noise.ts';

const SEEDS = 500;
const ROOM = 101_300;

/** Share of the seeds in which something held. */
function share(holds: (own: Noise) => boolean): number {
  let count = 0;
  for (let seed = 0; seed < SEEDS; seed += 1) count += Number(holds(noise(seed)));
  return count / SEEDS;
}

function expectCovers(covered: number): void {
  expect(
    covered,
    `the truth lies within the interval in ${100 * covered} % of the cases`,
  ).toBeGreaterThanOrEqual(0.9);
  expect(covered).toBeLessThanOrEqual(0.99);
}

const times = (count: number, step: number): number[] => Array.from({ length: count }, (_, i) => i * step);

describe('pressure decay', () => {
  const common = { gas: dryAir, volume: 95e-6, temperature: 288, against: ROOM };
  const STEP = 2000;
  const read = (law: (t: number) => number, time: readonly number[], own: Noise): number[] =>
    time.map((t) => ROOM + stepped(law(t) + 500 * own.normal() - ROOM, STEP));
  const error = readingError(STEP);

  it('through a gap', () => {
    const time = times(20, 6);
    let laminar = 0;
    const covered = share((own) => {
      const pressure = read((t) => pressureThroughGap(4e5, ROOM, 43.6, t), time, own);
      const fits = decayFits({ ...common, time, pressure, error, coolsIn: undefined });
      laminar += Number(shapeOf(fits) === 'laminar');
      return Math.abs(fits.laminar.fit.parameters[0]! + Math.log(43.6)) <= fits.laminar.share;
    });
    expectCovers(covered);
    expect(laminar / SEEDS).toBeGreaterThan(0.99);
  });

  it('through a hole', () => {
    const time = times(20, 3.5);
    const hole = { gas: dryAir, areaPerVolume: 2e-4, temperature: 288, against: ROOM };
    let orifice = 0;
    const covered = share((own) => {
      const pressure = read((t) => pressureThroughOrifice(hole, 4e5, t), time, own);
      const fits = decayFits({ ...common, time, pressure, error, coolsIn: undefined });
      orifice += Number(shapeOf(fits) === 'orifice');
      return Math.abs(fits.orifice.fit.parameters[0]! - Math.log(2e-4)) <= fits.orifice.share;
    });
    expectCovers(covered);
    expect(orifice / SEEDS).toBeGreaterThan(0.99);
  });

  it('through a gap, while the air still cools in another time than was expected', () => {
    const time = times(20, 6);
    const covered = share((own) => {
      const warm = (t: number): number =>
        pressureThroughGap(4e5, ROOM, 43.6, t) * (1 + 0.04 * Math.exp(-t / 6));
      const pressure = read(warm, time, own);
      const { laminar } = decayFits({ ...common, time, pressure, error, coolsIn: 4 });
      return Math.abs(laminar.fit.parameters[0]! + Math.log(43.6)) <= laminar.share;
    });
    expectCovers(covered);
  });

  it('is misled by cooling air when it takes it for a leak', () => {
    const time = times(20, 6);
    const covered = share((own) => {
      const warm = (t: number): number =>
        pressureThroughGap(4e5, ROOM, 43.6, t) * (1 + 0.04 * Math.exp(-t / 6));
      const { laminar } = decayFits({
        ...common,
        time,
        pressure: read(warm, time, own),
        error,
        coolsIn: undefined,
      });
      return Math.abs(laminar.fit.parameters[0]! + Math.log(43.6)) <= laminar.share;
    });
    expect(covered).toBeLessThan(0.5);
  });
});

it('coast-down: dry and viscous friction', () => {
  // The wheel of the derived check: closed form ω = (ω₀ + T/c) exp(−c t/J) − T/c.
  const [inertia, dry, viscous, from] = [1e-3, 0.02, 1e-4, 20 * Math.PI];
  const time = times(24, 0.1);
  const step = Math.PI / 30;
  const covered = { dry: 0, viscous: 0 };
  for (let seed = 0; seed < SEEDS; seed += 1) {
    const own = noise(seed);
    const speed = time.map((t) =>
      stepped(
        (from + dry / viscous) * Math.exp((-viscous * t) / inertia) - dry / viscous + 0.1 * own.normal(),
        step,
      ),
    );
    const fit = coastFit({ time, speed, error: readingError(step), inertia, pumping: [] });
    const t = student95(fit.fit.degreesOfFreedom);
    covered.dry += Number(Math.abs(fit.dry - dry) <= t * Math.sqrt(fit.covariance[0][0]));
    covered.viscous += Number(Math.abs(fit.viscous - viscous) <= t * Math.sqrt(fit.covariance[1][1]));
  }
  expectCovers(covered.dry / SEEDS);
  expectCovers(covered.viscous / SEEDS);
});

it('pump-up: mean delivery and that at the end', () => {
  const time = times(20, 8);
  const step = 5e3;
  const slope = (t: number): number => 5000 - 6 * t;
  const pressureAt = (t: number): number => ROOM + 5000 * t - 3 * t * t;
  const end = time.at(-1)!;
  const covered = { mean: 0, last: 0 };
  for (let seed = 0; seed < SEEDS; seed += 1) {
    const own = noise(seed);
    const pressure = time.map((t) => ROOM + stepped(pressureAt(t) + 2e3 * own.normal() - ROOM, step));
    const { mean, last } = pumpUpFit({ time, pressure, error: readingError(step) });
    covered.mean += Number(Math.abs(mean.value - slope(end / 2)) <= mean.half);
    covered.last += Number(Math.abs(last.value - slope(end)) <= last.half);
  }
  expectCovers(covered.mean / SEEDS);
  expectCovers(covered.last / SEEDS);
});

it('running log: three unknowns of a made-up engine whose speed and air go with powers of them', () => {
  // In place of the engine, which takes seconds a fit: the same fit in logarithms, the same two instruments, seven states.
  const pressures = [2.4, 2.6, 2.8, 3, 3.2, 3.4, 3.6];
  const made = ([leak, drag, port]: readonly number[]): number[] =>
    pressures.flatMap((p) => {
      const speed =
        100 * p * Math.exp(0.6 * port! - (0.5 / p) * Math.exp(drag!) - 0.02 * Math.exp(3 * leak!));
      return [speed, speed * p * Math.exp(0.1 * port!) * 0.05 + 2 * p * p * Math.exp(3 * leak!) * 0.2];
    });
  const truth = [0.25, 0.3, -0.15];
  const errors = made(truth).map((value, i) => (i % 2 === 0 ? 1.5 : 0.02 * value));
  const covered = [0, 0, 0];
  for (let seed = 0; seed < SEEDS; seed += 1) {
    const own = noise(seed);
    const read = made(truth).map((value, i) => value + errors[i]! * own.normal());
    const fit = leastSquares({
      start: [0, 0, 0],
      difference: 0.05,
      leastGain: 0.02,
      residuals: (p) => made(p).map((value, i) => (value - read[i]!) / errors[i]!),
    });
    truth.forEach((value, i) => {
      covered[i]! += Number(Math.abs(fit.parameters[i]! - value) <= halfWidth(fit, i));
    });
  }
  covered.forEach((count) => {
    expectCovers(count / SEEDS);
  });
});
