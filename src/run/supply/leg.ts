/**
 * One stretch of the receiver's pressure, the compressor on or off throughout.
 *
 * Mass in the receiver, mass delivered and mass taken are integrated together, so that the ledger of the air is a check:
 * what is in the receiver must differ by what came in less what went out.
 */
import type { EventFunction, Integrator } from '../../numerics/integrator.ts';
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

/** Ten years: what takes longer never happens [s]. */
const NEVER = 3e8;
const MOST_STEPS = 100_000;

/** From one pressure to another that lies that way. */
export function legTo(shed: Shed, compressorOn: boolean, from: number, to: number): Leg {
  const goal = to * shed.massPerPascal;
  const sense = to < from ? 1 : -1;
  const arrival: EventFunction = { value: (_time, of) => sense * (of(MASS) - goal) };
  const leg = travelled(shed, { compressorOn, from, to, longest: from === to ? 0 : NEVER, events: [arrival] });
  return leg.duration < NEVER ? leg : { ...leg, duration: Infinity };
}

/** From a pressure towards the one at which it settles, for that long [s], the compressor running. */
export function settlingLeg(shed: Shed, from: number, to: number, longest: number): Leg {
  return travelled(shed, { compressorOn: true, from, to, longest, events: [] });
}

interface Way {
  readonly compressorOn: boolean;
  readonly from: number;
  readonly to: number;
  readonly longest: number;
  readonly events: readonly EventFunction[];
}

function travelled(shed: Shed, way: Way): Leg {
  const { compressorOn, from, to, longest, events } = way;
  const { massPerPascal } = shed;
  const start = from * massPerPascal;
  const state = Float64Array.of(start, 0, 0);
  const integrator = integratorOf(shed, compressorOn);
  const time = [0];
  const pressure = [from];
  let now = 0;
  let arrived = false;
  while (!arrived && now < longest) {
    const next = Math.min(longest, now + rowTime(shed, way, pressure.at(-1)!));
    const arrival = integrator.advance(now, state, next, { events, stepLimit: MOST_STEPS });
    if (arrival.reason !== 'end' && arrival.reason !== 'event')
      throw new Error(`the receiver cannot be followed: ${arrival.reason}`);
    now = arrival.x;
    arrived = arrival.reason === 'event';
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
  const pace = compressorOn ? gain(shed, pressure) : shed.demand(pressure);
  const share = (Math.abs(to - from) * shed.massPerPascal) / WAY_ROWS / Math.abs(pace);
  return Math.min(share, longest / TIME_ROWS);
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
