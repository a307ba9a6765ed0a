/** Steppers by a law of our own in place of an integrator, so that what is made of arrivals can be checked in no time. */
import { SLOT } from '../../src/model/slots.ts';
import type { Direction } from '../../src/model/system.ts';
import type { Arrival, Journey } from '../../src/numerics/integrator.ts';
import type { Stepper } from '../../src/run/stepper.ts';

/** One call of a stepper, as it was made. */
export interface Asked {
  /** Undefined for a stretch against the crank angle. */
  readonly direction?: Direction;
  readonly from: number;
  readonly to: number;
  readonly journey: Journey;
}

export interface Law {
  readonly stops?: readonly number[];
  readonly acceptedSteps?: number;
  /** Moves the state; what it does not answer for ends where it was sent, with the slot that goes along set. */
  readonly inAngle?: (y: Float64Array, to: number, journey: Journey) => Arrival | undefined;
  readonly inTime?: (
    y: Float64Array,
    to: number,
    journey: Journey,
    direction: Direction,
  ) => Arrival | undefined;
}

/** With every call that was made, in order. */
export function stepperByLaw({ stops = [0], acceptedSteps = 0, inAngle, inTime }: Law): {
  readonly stepper: Stepper;
  readonly asked: Asked[];
} {
  const asked: Asked[] = [];
  const ended = (y: Float64Array, slot: number, x: number): Arrival => {
    y[slot] = x;
    return { reason: 'end', x };
  };
  const stepper: Stepper = {
    stops,
    counters: { derivativeCalls: 0, acceptedSteps },
    inAngle: (y, to, journey) => {
      if (asked.length > 10_000) throw new Error('asked again and again');
      asked.push({ from: y[SLOT.crankAngle]!, to, journey });
      return inAngle?.(y, to, journey) ?? ended(y, SLOT.crankAngle, to);
    },
    inTime: (direction, y, to, journey) => {
      if (asked.length > 10_000) throw new Error('asked again and again');
      asked.push({ direction, from: y[SLOT.time]!, to, journey });
      return inTime?.(y, to, journey, direction) ?? ended(y, SLOT.time, to);
    },
  };
  return { stepper, asked };
}

/** A state as an event or a watcher reads it. */
export const readerOf =
  (y: Float64Array): ((component: number) => number) =>
  (component) =>
    y[component]!;

/** A step from one place to another through one state. */
export const stepThrough = (y: Float64Array, from: number, to: number) => ({
  from,
  to,
  component: (index: number) => y[index]!,
  interpolate: (_x: number, out: Float64Array) => {
    out.set(y);
  },
});
