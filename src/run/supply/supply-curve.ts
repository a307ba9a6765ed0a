/**
 * Speed and demand of the running engine over the pressure in the receiver, from some dozen settled answers.
 *
 * The receiver falls slowly beside the engine, which therefore runs settled at each pressure. Going down from the highest
 * pressure each answer is sought from the speed of the one before, as a running engine comes there: it may run on where
 * it would not start. The pressure at which it stops is closed in by halving. Between the answers: monotone cubics.
 *
 * Without a described regulator the receiver stands at the engine as soon as it has fallen to the set pressure. With one
 * it stands in front of the regulator at all times, and the answers are those of the engine behind it.
 */
import { monotoneCubic } from '../../numerics/monotone-cubic.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { Outcome } from '../outcome.ts';
import type { AnswerOf } from './settled-answer.ts';
import type { OfPressure } from './shed.ts';

/** The running engine at one pressure in the receiver. */
export interface SupplyPoint {
  /** [Pa] */
  readonly pressure: number;
  /** [rad/s] */
  readonly speed: number;
  /** [kg/s] */
  readonly airMassFlow: number;
}

export interface SupplyCurve {
  /** By pressure, the lowest first. */
  readonly points: readonly SupplyPoint[];
  /** Between the lowest pressure at which it runs and the highest at which it does not, so far as is known [Pa]. */
  readonly stallPressure: number;
  readonly speed: OfPressure;
  readonly demand: OfPressure;
  /** The same with one more answer, if the engine runs there. */
  readonly refinedAt: (pressure: number) => SupplyCurve;
}

/** Shares of the highest gauge pressure at which the engine is tried, one after the other until it stops. */
const SHARES = [0.85, 0.7, 0.55, 0.4, 0.27, 0.15, 0.06];

/** The pressure at which it stops is found to this share of the highest gauge pressure. */
const STALL_SHARE = 0.004;

/** Answers of the running engine; more are set where its speed changes most, until there are so many. */
const ANSWERS = 10;

/**
 * An answer is sought from so many times the speed before it: an engine that has been running has its chest full, and
 * filling an empty one must not cost it the turn that decides.
 */
const PUSH = 1.5;

/** An answer is known where one is this close, as a share of the pressure. */
const CLOSE = 2e-4;

/** The engine with so much in the receiver. */
export function specAt(spec: EngineSpec, receiverPressure: number): EngineSpec {
  const { supply } = spec;
  const { regulator, pressure } = supply;
  if (regulator)
    return { ...spec, supply: { ...supply, regulator: { ...regulator, inlet_pressure: receiverPressure } } };
  return { ...spec, supply: { ...supply, pressure: Math.min(pressure, receiverPressure) } };
}

/** From the highest pressure down, or how the engine ends that does not even run there. */
export function supplyCurve(spec: EngineSpec, highest: number, answer: AnswerOf): SupplyCurve | Outcome {
  const room = spec.atmosphere.pressure;
  const { outcome, settled } = answer(specAt(spec, highest));
  if (settled === undefined) return outcome;
  const running = [{ pressure: highest, ...figures(settled) }];
  const tryAt = (pressure: number): boolean => {
    const point = pointAt(spec, pressure, running.at(-1)!, answer);
    if (point) running.push(point);
    return point !== undefined;
  };
  const at = (share: number): number => room + share * (highest - room);
  let stopped = SHARES.map(at).find((pressure) => !tryAt(pressure));
  while (stopped !== undefined && running.at(-1)!.pressure - stopped > STALL_SHARE * (highest - room)) {
    const middle = (running.at(-1)!.pressure + stopped) / 2;
    if (!tryAt(middle)) stopped = middle;
  }
  let curve = curveThrough(running.reverse(), (pressure, from) => pointAt(spec, pressure, from, answer));
  for (let more = ANSWERS - running.length; more > 0; more -= 1) curve = curve.refinedAt(steepest(curve));
  return curve;
}

/** The middle of the stretch between two answers over which the speed changes most. */
function steepest({ points }: SupplyCurve): number {
  const changes = points.slice(1).map(({ speed }, i) => Math.abs(speed - points[i]!.speed));
  const i = changes.indexOf(Math.max(...changes));
  return points.length < 2 ? points[0]!.pressure : (points[i]!.pressure + points[i + 1]!.pressure) / 2;
}

const figures = ({ speed, airMassFlow }: Omit<SupplyPoint, 'pressure'>) => ({ speed, airMassFlow });

/** The engine at a lower pressure, coming from where it ran before. */
function pointAt(
  spec: EngineSpec,
  pressure: number,
  from: SupplyPoint,
  answer: AnswerOf,
): SupplyPoint | undefined {
  const there = specAt(spec, pressure);
  const { settled } = answer({ ...there, start: { ...there.start, hand_speed: PUSH * from.speed } });
  return settled && { pressure, ...figures(settled) };
}

function curveThrough(
  points: readonly SupplyPoint[],
  pointFrom: (pressure: number, from: SupplyPoint) => SupplyPoint | undefined,
): SupplyCurve {
  const pressures = points.map(({ pressure }) => pressure);
  const through = (value: (point: SupplyPoint) => number): OfPressure =>
    monotoneCubic(pressures, points.map(value));
  return {
    points,
    stallPressure: pressures[0]!,
    speed: through(({ speed }) => speed),
    demand: through(({ airMassFlow }) => airMassFlow),
    refinedAt: (pressure) => {
      const above = pressures.findIndex((known) => known > pressure);
      const known = above < 1 || pressures.some((one) => Math.abs(one - pressure) < CLOSE * pressure);
      const added = known ? undefined : pointFrom(pressure, points[above]!);
      return curveThrough(added ? points.toSpliced(above, 0, added) : points, pointFrom);
    },
  };
}
