/**
 * One stretch of the receiver's pressure, the compressor on or off throughout.
 *
 * Mass in the receiver, mass delivered and mass taken are integrated together, so that the ledger of the air is a check:
 * what is in the receiver must differ by what came in less what went out.
 */
import type { AcceptedStep, EventFunction, Integrator } from '../../numerics/integrator.ts';
import { odexIntegrator } from '../../numerics/odex-integrator.ts';
import { gain, type Shed } from './shed.ts';

export interface Leg {
  readonly compressorOn: boolean;
  /** [s]; Infinity when its end is not reached in any time that matters. */
  readonly duration: number;
  /** Mass that the compressor delivered, that the engine took, and by which the receiver gained [kg]. */
  readonly delivered: number;
  readonly taken: number;
  readonly stored: number;
  /** Time since the leg began [s] and pressure [Pa], from its beginning to its end. */
  readonly time: readonly number[];
  readonly pressure: readonly number[];
}

const MASS = 0;
const DELIVERED = 1;
const TAKEN = 2;

const TOLERANCE = 1e-10;

/** A row for each of so many even shares of the way, and of the time there is at most. */
const WAY_ROWS = 24;
const TIME_ROWS = 200;

/**
 * Rows to one journey of the integrator: long enough to step freely, short enough not to go far beyond the end, where
 * the laws may have a kink.
 */
const JOURNEY_ROWS = 12;

/** Pressures are the same when they differ by less than this share, of themselves or of the way between them. */
const SAME = 1e-9;

/** Ten years: what takes longer never happens [s]. */
const NEVER = 3e8;
const MOST_STEPS = 100_000;
const MOST_JOURNEYS = 10_000;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * b;

/** From one pressure to another that lies that way. */
export function legTo(shed: Shed, compressorOn: boolean, from: number, to: number): Leg {
  const goal = to * shed.massPerPascal;
  const sense = to < from ? 1 : -1;
  const arrival: EventFunction = { value: (_time, of) => sense * (of(MASS) - goal) };
  const longest = isSame(from, to) ? 0 : NEVER;
  const leg = travelled(shed, { compressorOn, from, to, longest, end: arrival });
  return leg.duration < NEVER ? leg : { ...leg, duration: Infinity };
}

/**
 * From a pressure towards the one at which it settles, for that long [s], the compressor running. Once it is as good as
 * there it is held: a small receiver would follow its balance in steps far shorter than the time there is.
 */
export function settlingLeg(shed: Shed, from: number, to: number, longest: number): Leg {
  const goal = to * shed.massPerPascal;
  const way = from * shed.massPerPascal - goal;
  const there: EventFunction = { value: (_time, of) => (of(MASS) - goal) / way - SAME };
  const reach = isSame(from, to) ? 0 : longest;
  const leg = travelled(shed, { compressorOn: true, from, to, longest: reach, end: there });
  return held(leg, shed.demand(to), longest);
}

/** A leg that has settled, held until a time [s] at which the compressor still gives what is taken [kg/s]. */
function held(leg: Leg, flow: number, until: number): Leg {
  const { duration, delivered, taken, time, pressure } = leg;
  const rest = until - duration;
  if (rest <= 0) return leg;
  const rows = Math.ceil((TIME_ROWS * rest) / until);
  const later = Array.from({ length: rows }, (_, i) =>
    i + 1 < rows ? duration + ((i + 1) * rest) / rows : until,
  );
  return {
    ...leg,
    duration: until,
    delivered: delivered + flow * rest,
    taken: taken + flow * rest,
    time: [...time, ...later],
    pressure: [...pressure, ...later.map(() => pressure.at(-1)!)],
  };
}

interface Way {
  readonly compressorOn: boolean;
  readonly from: number;
  readonly to: number;
  readonly longest: number;
  /** Ends the leg when it falls to zero. */
  readonly end: EventFunction;
}

function travelled(shed: Shed, way: Way): Leg {
  const { compressorOn, from, to, longest, end } = way;
  const { massPerPascal } = shed;
  const start = from * massPerPascal;
  const state = Float64Array.of(start, 0, 0);
  const integrator = integratorOf(shed, compressorOn);
  const time = [0];
  const pressure = [from];
  let now = 0;
  let nextRow = rowTime(shed, way, from);
  let arrived = false;
  const onStep = (step: AcceptedStep): void => {
    for (; nextRow < step.to; nextRow += rowTime(shed, way, pressure.at(-1)!)) {
      time.push(nextRow);
      pressure.push(step.component(MASS, nextRow) / massPerPascal);
    }
  };
  for (let journeys = 1; !arrived && now < longest; journeys += 1) {
    const until = Math.min(longest, now + JOURNEY_ROWS * rowTime(shed, way, state[MASS]! / massPerPascal));
    const arrival = integrator.advance(now, state, until, { events: [end], onStep, stepLimit: MOST_STEPS });
    if ((arrival.reason !== 'end' && arrival.reason !== 'event') || journeys > MOST_JOURNEYS)
      throw new Error(`the receiver cannot be followed from ${from} to ${to} Pa: ${arrival.reason}`);
    now = arrival.x;
    // A journey that ends on the spot may leave the goal behind by a rounding, unseen by the search within steps.
    arrived = arrival.reason === 'event' || end.value(now, (i) => state[i]!) <= 0;
  }
  if (now > 0) {
    time.push(now);
    pressure.push(arrived ? to : state[MASS]! / massPerPascal);
  }
  return {
    compressorOn,
    duration: now,
    delivered: state[DELIVERED]!,
    taken: state[TAKEN]!,
    stored: state[MASS]! - start,
    time,
    pressure,
  };
}

/** Time to the next row: an even share of the way at the present pace, or of the time there is. */
function rowTime(shed: Shed, { compressorOn, from, to, longest }: Way, pressure: number): number {
  const most = longest / TIME_ROWS;
  if (isSame(from, to)) return most;
  const pace = compressorOn ? gain(shed, pressure) : shed.demand(pressure);
  const share = (Math.abs(to - from) * shed.massPerPascal) / WAY_ROWS / Math.abs(pace);
  return Math.min(share, most);
}

function integratorOf({ massPerPascal, delivery, demand, cutOut }: Shed, compressorOn: boolean): Integrator {
  const full = massPerPascal * cutOut;
  return odexIntegrator(
    {
      dimension: 3,
      autonomous: true,
      derivative: (_time, y, slopes) => {
        const pressure = y[MASS]! / massPerPascal;
        slopes[DELIVERED] = compressorOn ? delivery(pressure) : 0;
        slopes[TAKEN] = demand(pressure);
        slopes[MASS] = slopes[DELIVERED] - slopes[TAKEN];
      },
    },
    { relative: TOLERANCE, absolute: Float64Array.of(full, full, full).map((mass) => mass * TOLERANCE) },
  );
}
