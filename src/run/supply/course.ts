/**
 * What happens to a full receiver: the compressor rests until cut-in, then runs, and the pressure goes where the balance
 * of delivery and demand takes it. The one source of duty, of starts, and of the minutes until the pressure sags.
 */
import { endState, type EndState } from './end-state.ts';
import { legTo, type Leg } from './leg.ts';
import { settlingLeg } from './settling-leg.ts';
import type { Shed } from './shed.ts';

export interface Course {
  readonly end: EndState;
  /** One after the other from a full receiver; those of a course that cycles repeat as they are. */
  readonly legs: readonly Leg[];
  /** Share of the time that the compressor runs, once the full receiver has been used up. */
  readonly duty: number;
  /** Time between two starts of the compressor [s]; only of a course that cycles. */
  readonly period?: number;
  /** Time from a full receiver until the regulator can no longer hold its pressure, and until the engine stops [s]. */
  readonly timeToSag?: number;
  readonly timeToStop?: number;
}

/** A receiver that settles is followed until that time [s]. */
export function courseOf(shed: Shed, until: number): Course {
  const { cutOut, cutIn, stallPressure } = shed;
  const resting = legTo(shed, false, cutOut, Math.max(cutIn, stallPressure));
  if (stallPressure > cutIn)
    return { end: { kind: 'stops' }, legs: [resting], duty: 0, timeToStop: resting.duration };
  const end = endState(shed);
  if (end.kind === 'cycles') return cycle(end, resting, legTo(shed, true, cutIn, cutOut));
  if (end.kind === 'stops') return stopping(end, [resting, ...falling(shed, stallPressure)], shed);
  return settling(shed, end, resting, until);
}

function cycle(end: EndState, resting: Leg, filling: Leg): Course {
  const period = resting.duration + filling.duration;
  const duty = period === Infinity ? 1 : filling.duration / period;
  return { end, legs: [resting, filling], duty, period };
}

function stopping(end: EndState, legs: readonly Leg[], { stallPressure, setPressure }: Shed): Course {
  return {
    end,
    legs,
    duty: 1,
    ...(stallPressure < setPressure ? { timeToSag: totalTime(legs.slice(0, -1)) } : {}),
    timeToStop: totalTime(legs),
  };
}

function settling(
  shed: Shed,
  end: EndState & { readonly pressure: number },
  resting: Leg,
  until: number,
): Course {
  const { cutIn, setPressure } = shed;
  const sags = end.pressure < setPressure;
  const before = sags ? [resting, legTo(shed, true, cutIn, setPressure)] : [resting];
  const left = Math.max(0, until - totalTime(before));
  const last = settlingLeg(shed, sags ? setPressure : cutIn, end.pressure, left);
  return { end, legs: [...before, last], duty: 1, ...(sags ? { timeToSag: totalTime(before) } : {}) };
}

/** From cut-in down, the compressor running, with a stop where the engine's demand has its kink: at the set pressure. */
function falling(shed: Shed, to: number): readonly Leg[] {
  const { cutIn, setPressure } = shed;
  if (to >= setPressure) return [legTo(shed, true, cutIn, to)];
  return [legTo(shed, true, cutIn, setPressure), legTo(shed, true, setPressure, to)];
}

const totalTime = (legs: readonly Leg[]): number => legs.reduce((sum, { duration }) => sum + duration, 0);
