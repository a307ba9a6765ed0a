/**
 * Which leak makes a pressure fall as it was read: through a laminar gap (gas/pressure-decay.ts) or through an orifice
 * (gas/orifice-decay.ts), with or without air that still cools from being let in.
 *
 * While the air cools to its walls it loses pressure without losing mass: p = p_leak(t)·(1 + A exp(−t/τ)). Unless that is
 * surely over, A and τ are fitted too, τ known beforehand to a factor of two and A to be some tenth at most, so that
 * readings which cannot tell warmth from leak widen the interval of the leak instead of shifting it.
 *
 * The two laws have equally many parameters and are compared by n ln(S/n), as the Bayesian information criterion does; a
 * difference above 6 is strong evidence (Kass & Raftery, J. Am. Stat. Assoc. 90 (1995) 773, from memory).
 */
import type { Gas } from '../gas/gas.ts';
import { nozzleFlow } from '../gas/nozzle.ts';
import { pressureThroughOrifice } from '../gas/orifice-decay.ts';
import { pressureThroughGap } from '../gas/pressure-decay.ts';
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { leastSquares, type LeastSquaresFit } from '../numerics/least-squares.ts';
import { halfWidth } from './interval.ts';

export interface DecayReadings {
  readonly gas: Gas;
  readonly volume: number;
  readonly temperature: number;
  readonly against: number;
  /** From the first reading [s], and pressures [Pa absolute]. */
  readonly time: readonly number[];
  readonly pressure: readonly number[];
  /** Standard error of a reading [Pa]. */
  readonly error: number;
  /** τ as it is expected [s]; `undefined` when the air had its time to cool. */
  readonly coolsIn: number | undefined;
}

export interface Cooling {
  /** A, the share of the pressure that the warmth made at the first reading. */
  readonly share: number;
  /** It is more than the readings may show by chance. */
  readonly plain: boolean;
  /** τ [s]. */
  readonly timeConstant: number;
}

export interface DecayFit {
  readonly shape: 'laminar' | 'orifice';
  readonly cooling: Cooling | undefined;
  /** The first parameter is the logarithm of the leak. */
  readonly fit: LeastSquaresFit;
  /** Half the 95 % interval of the leak in its logarithm. */
  readonly share: number;
  readonly score: number;
  /** Fitted reading at a time, and what the leak alone leaves then [Pa]. */
  readonly reading: (time: number) => number;
  readonly leakOnly: (time: number) => number;
  /** Mass flow [kg/s] at a pressure. */
  readonly flow: (pressure: number) => number;
}

export interface DecayFits {
  readonly laminar: DecayFit;
  readonly orifice: DecayFit;
}

const STRONG = 6;

/** What is known of the warmth beforehand: A, and ln τ either way. */
const WARMTH = 0.1;
const LOG_TIME = Math.LN2;

/** The shape the curve speaks for; `undefined` when it does not. */
export function shapeOf({ laminar, orifice }: DecayFits): DecayFit['shape'] | undefined {
  const difference = orifice.score - laminar.score;
  if (Math.abs(difference) < STRONG) return undefined;
  return difference > 0 ? 'laminar' : 'orifice';
}

export const decayFits = (readings: DecayReadings): DecayFits => ({
  laminar: fitOf(readings, laminarLaw(readings)),
  orifice: fitOf(readings, orificeLaw(readings)),
});

interface Law {
  readonly shape: DecayFit['shape'];
  /** A first guess of the logarithm of the leak. */
  readonly guess: number;
  readonly pressure: (logLeak: number, from: number, time: number) => number;
  readonly flow: (logLeak: number, pressure: number) => number;
}

/** How far the pressure fell, over room and reading noise, as shares of what stood above the room. */
function ends({ time, pressure, against, error }: DecayReadings) {
  const from = pressure[0]!;
  const to = Math.max(pressure.at(-1)!, against + error);
  return { from, to: Math.min(to, from - error), span: time.at(-1)! };
}

function laminarLaw(readings: DecayReadings): Law {
  const { gas, volume, temperature, against } = readings;
  const { from, to, span } = ends(readings);
  const u = (p: number): number => (p - against) / (p + against);
  return {
    shape: 'laminar',
    guess: log(log(u(from) / u(to)) / span),
    pressure: (logLeak, start, time) => pressureThroughGap(start, against, exp(-logLeak), time),
    flow: (logLeak, p) =>
      (volume * exp(logLeak) * (square(p) - square(against))) /
      (2 * against * gas.specificGasConstant * temperature),
  };
}

function orificeLaw(readings: DecayReadings): Law {
  const { gas, volume, temperature, against } = readings;
  const { from, to, span } = ends(readings);
  const perArea = gas.chokedFlowFactor * gas.specificGasConstant * Math.sqrt(temperature);
  return {
    shape: 'orifice',
    guess: log(log(from / to) / (span * perArea)),
    pressure: (logLeak, start, time) => {
      const decay = { gas, areaPerVolume: exp(logLeak), temperature, against };
      return pressureThroughOrifice(decay, start, time);
    },
    flow: (logLeak, p) => volume * nozzleFlow(gas, exp(logLeak), p, temperature, against),
  };
}

function fitOf(readings: DecayReadings, law: Law): DecayFit {
  const { time, pressure, against, error, coolsIn } = readings;
  const first = pressure[0]!;
  const startOf = (p: readonly number[]): number => Math.max(against + error / 10, first + p[1]! * error);
  const timeConstant = (p: readonly number[]): number => (coolsIn ?? 1) * exp(p[3] ?? 0);
  const warmth = (p: readonly number[], t: number): number =>
    1 + (p[2] ?? 0) * WARMTH * exp(-t / timeConstant(p));
  const reading = (p: readonly number[], t: number): number =>
    law.pressure(p[0]!, startOf(p), t) * warmth(p, t);
  const beforehand = (p: readonly number[]): number[] =>
    coolsIn === undefined ? [] : [p[2]!, p[3]! / LOG_TIME];
  const fit = leastSquares({
    start: coolsIn === undefined ? [law.guess, 0] : [law.guess, 0, 0, 0],
    residuals: (p) => [...time.map((t, i) => (reading(p, t) - pressure[i]!) / error), ...beforehand(p)],
  });
  const p = fit.parameters;
  const residuals = fit.residuals.slice(0, time.length);
  const left = residuals.reduce((sum, value) => sum + square(value), 0);
  return {
    shape: law.shape,
    cooling: coolsIn === undefined ? undefined : coolingOf(fit, timeConstant(p), error / first),
    fit: { ...fit, residuals, sumOfSquares: left },
    share: halfWidth(fit, 0),
    score: time.length * log(left / time.length + 1e-12),
    reading: (t) => reading(p, t),
    leakOnly: (t) => law.pressure(p[0]!, startOf(p), t),
    flow: (at) => law.flow(p[0]!, at),
  };
}

function coolingOf(fit: LeastSquaresFit, timeConstant: number, noise: number): Cooling {
  const share = fit.parameters[2]! * WARMTH;
  const doubt = 2 * Math.sqrt(fit.covariance[2]![2]!) * WARMTH;
  return { share, timeConstant, plain: share > Math.max(doubt, noise) };
}
