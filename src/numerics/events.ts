/**
 * The first event within an accepted step.
 *
 * Each event function is looked at at the step's ends and at interior points, so that a dip below zero and back inside
 * one step is not missed unless it is shorter than the spacing; the crossing is then closed in by bisection. A value of
 * exactly zero at the start does not count, so an event just handled is not found again.
 */
import type { AcceptedStep, EventFunction } from './integrator.ts';

const PROBES = 6;
const BISECTIONS = 60;

export interface FoundEvent {
  readonly event: number;
  readonly x: number;
}

/** The earliest crossing in the step. */
export function firstEvent(step: AcceptedStep, events: readonly EventFunction[]): FoundEvent | undefined {
  const width = (step.to - step.from) / PROBES;
  for (let i = 0; i < PROBES; i += 1) {
    const left = step.from + i * width;
    const right = i === PROBES - 1 ? step.to : left + width;
    const found = earliestBetween(step, events, left, right);
    if (found) return found;
  }
  return undefined;
}

function earliestBetween(
  step: AcceptedStep,
  events: readonly EventFunction[],
  left: number,
  right: number,
): FoundEvent | undefined {
  let earliest: FoundEvent | undefined;
  for (const [index, event] of events.entries()) {
    const valueAt = (x: number): number => event.value(x, (component) => step.component(component, x));
    if (!(valueAt(left) > 0 && valueAt(right) <= 0)) continue;
    const x = crossing(valueAt, left, right);
    if (!earliest || x < earliest.x) earliest = { event: index, x };
  }
  return earliest;
}

/** Where f, above zero at `left` and not at `right`, first is not: the right end of the closing bracket. */
function crossing(f: (x: number) => number, left: number, right: number): number {
  let [above, below] = [left, right];
  for (let i = 0; i < BISECTIONS && below - above > Number.EPSILON * Math.abs(below); i += 1) {
    const middle = (above + below) / 2;
    if (f(middle) > 0) above = middle;
    else below = middle;
  }
  return below;
}
