/**
 * A leak of a known flow as the hole or the gap that would pass it: the laws are those the engine model uses, so that what
 * comes out can go into a scenario.
 */
import { gapFlow } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import { nozzleFlow } from '../gas/nozzle.ts';
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import type { GapShape } from './gap-shapes/gap-shape.ts';

/** Of a hole with sharp edges, as a leak of kind `hole` has it if nothing is said: common practice, no source. */
export const HOLE_DISCHARGE = 0.65;

export interface LeakConditions {
  readonly gas: Gas;
  /** Pressure at which the flow is told, and that of the room [Pa absolute]; temperature [K]. */
  readonly pressure: number;
  readonly against: number;
  readonly temperature: number;
}

/** Diameter [m] of the round hole that passes the flow [kg/s]. */
export function equivalentHole(
  flow: number,
  { gas, pressure, against, temperature }: LeakConditions,
): number {
  const area = flow / nozzleFlow(gas, 1, pressure, temperature, against);
  return Math.sqrt((4 * area) / (Math.PI * HOLE_DISCHARGE));
}

const SMALLEST_GAP = 1e-8;
const LARGEST_GAP = 0.05;

/** Height [m] of the gap that passes the flow [kg/s]; by halving, in the logarithm. */
export function equivalentGap(flow: number, shape: GapShape, conditions: LeakConditions): number {
  const { gas, pressure, against, temperature } = conditions;
  let low = log(SMALLEST_GAP);
  let high = log(LARGEST_GAP);
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    const height = exp(middle);
    const passes = gapFlow(
      gas,
      shape.resistance(height),
      shape.section(height),
      pressure,
      temperature,
      against,
    );
    if (passes < flow) low = middle;
    else high = middle;
  }
  return exp((low + high) / 2);
}
