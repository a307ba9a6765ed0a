/**
 * The first event within an accepted step.
 *
 * Each event function is looked at at the step's ends and at interior points, so that a dip below zero and back inside
 * one step is not missed unless it is shorter than the spacing; the crossing is then closed in on to the last digit. A value of
 * exactly zero at the start does not count, so an event just handled is not found again.
 */
import { root } from './root.ts';
import { searched } from './search.ts';
import type { AcceptedStep, EventFunction } from './integrator.ts';

const PROBES = 6;

export interface FoundEvent {
  readonly event: number;
  readonly x: number;
}

/** The earliest crossing in the step. */
export function firstEvent(step: AcceptedStep, events: readonly EventFunction[]): FoundEvent | undefined {
  let earliest: FoundEvent | undefined;
  for (const [index, event] of events.entries()) {
    const x = firstCrossing(step, event);
    if (x !== undefined && !(earliest && earliest.x <= x)) earliest = { event: index, x };
  }
  return earliest;
}

function firstCrossing(step: AcceptedStep, event: EventFunction): number | undefined {
  const { from, to } = step;
  let at = from;
  const reader = (component: number): number => step.component(component, at);
  const valueAt = (x: number): number => {
    at = x;
    return event.value(x, reader);
  };
  let left = from;
  let isAbove = valueAt(from) > 0;
  for (let i = 1; i <= PROBES; i += 1) {
    const right = i === PROBES ? to : from + (i / PROBES) * (to - from);
    const value = valueAt(right);
    if (isAbove && value <= 0) return crossing(valueAt, left, right);
    isAbove = value > 0;
    left = right;
  }
  return undefined;
}

/** Where f, above zero at `left` and not at `right`, first is not: the far end of the closing bracket. */
function crossing(f: (x: number) => number, left: number, right: number): number {
  const bracket = { a: left, b: right, valueAtA: f(left), valueAtB: f(right) };
  const { near, far } = searched(root(bracket, 0), f);
  return f(near) > 0 ? far : near;
}
