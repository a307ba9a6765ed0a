/**
 * What would suffice to run the engine at its set pressure for ever: a compressor that need not run for more of the time
 * than its maker allows, and receivers that last, or spare the motor, long enough.
 *
 * All times of a receiver go with its volume: twice the receiver lasts twice as long and starts the motor half as often.
 */
import { bisected } from '../../numerics/bisection.ts';
import type { Compressor } from '../../parts/compressor.ts';
import { courseOf, type Course } from './course.ts';
import { legTo } from './leg.ts';
import type { Shed } from './shed.ts';

export interface Sufficient {
  /** Free air [m³/s, at the room] that a compressor has to give at the pressure at which the present one is stated. */
  readonly freeAirDelivery: number;
  /** Receiver with which that compressor starts no more often than allowed [m³]; undefined if it never stops. */
  readonly receiver?: number;
}

const HOUR = 3600;

/** Accuracy of a delivery, as a share of it. */
const CLOSE = 1e-6;

/** Places between cut-in and cut-out at which delivery and demand are compared. */
const PLACES = 32;

/** Starts in an hour; none of a compressor that never stops. */
export const startsPerHour = ({ period }: Course): number => (period === undefined ? 0 : HOUR / period);

/** With the present switch settings. */
export function sufficient(compressor: Compressor, shed: Shed): Sufficient {
  const { free_air_delivery, receiver_volume, duty_rating, starts_per_hour } = compressor;
  const factor = sufficientFactor(shed, duty_rating);
  const starts = startsPerHour(courseOf(withDelivery(shed, factor), 0));
  return {
    freeAirDelivery: factor * free_air_delivery,
    ...(starts > 0 ? { receiver: (receiver_volume * starts) / starts_per_hour } : {}),
  };
}

/** Receiver [m³] that the present compressor needs so as not to start too often; undefined if it never stops. */
export function receiverForStarts(compressor: Compressor, course: Course): number | undefined {
  const starts = startsPerHour(course);
  return starts > 0 ? (compressor.receiver_volume * starts) / compressor.starts_per_hour : undefined;
}

/** Receiver [m³] that holds the set pressure so long [s] with the present compressor; undefined if any does for ever. */
export function receiverForTime(
  compressor: Compressor,
  { timeToSag, timeToStop }: Course,
  wanted: number,
): number | undefined {
  const lasts = timeToSag ?? timeToStop;
  return lasts === undefined ? undefined : (compressor.receiver_volume * wanted) / lasts;
}

/** The shed with a compressor of so many times the delivery, alike in everything else. */
const withDelivery = (shed: Shed, factor: number): Shed => ({
  ...shed,
  delivery: (pressure) => factor * shed.delivery(pressure),
});

/** The smallest multiple of the present delivery that keeps the duty within the rating. */
function sufficientFactor(shed: Shed, rating: number): number {
  const { delivery, demand, setPressure, cutIn, cutOut } = shed;
  // One that may run all the time need only hold the set pressure.
  if (rating >= 1) return demand(setPressure) / delivery(setPressure);
  const justFills = hardest(shed);
  const resting = legTo(shed, false, cutOut, cutIn).duration;
  const tooBusy = (factor: number): boolean => {
    const filling = legTo(withDelivery(shed, factor), true, cutIn, cutOut).duration;
    return filling * (1 - rating) > resting * rating;
  };
  return bisected(tooBusy, justFills * (1 + CLOSE), (justFills / rating) * (1 + CLOSE), CLOSE);
}

/** The greatest share that demand is of the delivery between cut-in and cut-out. */
function hardest({ delivery, demand, cutIn, cutOut }: Shed): number {
  let most = 0;
  for (let i = 0; i <= PLACES; i += 1) {
    const pressure = cutIn + ((cutOut - cutIn) * i) / PLACES;
    most = Math.max(most, demand(pressure) / delivery(pressure));
  }
  return most;
}
