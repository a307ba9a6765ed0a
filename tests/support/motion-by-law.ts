/**
 * A motion whose stepper follows a law of ours, so that what it makes of arrivals can be checked in no time: the engine says
 * only what pushes and what holds.
 */
import { FIRST_VOLUME } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { Direction } from '../../src/model/system.ts';
import { motionFrom } from '../../src/run/motion.ts';
import type { TraceRecorder } from '../../src/run/trace-recorder.ts';
import { systemOf } from './drive.ts';
import { referenceSpec, spoolGear } from './reference-engine.ts';
import { stepperByLaw, type Asked, type Law } from './stepper-by-law.ts';

/** Tight, so that a full chest stays full. */
export const tightSpec = referenceSpec({ valve_gear: spoolGear({ clearance: 0 }), leaks: [] });
export const tightSystem = systemOf(tightSpec);
const { engine, slots } = tightSystem;
const CHEST = engine.chest - FIRST_VOLUME;
export const CYLINDER = engine.ends[0].place - FIRST_VOLUME;

export interface Beginning {
  readonly angle?: number;
  readonly speed?: number;
  readonly time?: number;
  readonly longestTime?: number;
}

/** A motion about to begin, with what its stepper is asked and the times its recorder is told. */
export function motionBy(
  law: Law,
  { angle = 0.5, speed = 0, time = 0, longestTime = 1000 }: Beginning = {},
  system = tightSystem,
) {
  const { stepper, asked } = stepperByLaw(law);
  const noted: number[] = [];
  const marked: number[] = [];
  const recorder: TraceRecorder = {
    note: (component) => noted.push(component(SLOT.time)),
    mark: (component) => marked.push(component(SLOT.time)),
    finish: () => {
      throw new Error('not asked for');
    },
  };
  const y = initialState(system, angle, speed);
  y[SLOT.time] = time;
  return { motion: motionFrom({ system, stepper, recorder, y, longestTime }), y, asked, noted, marked };
}

/** Gives a volume another pressure, in units of what it has. */
function compress(y: Float64Array, volume: number, factor: number): void {
  y[slots.mass(volume)]! *= factor;
  y[slots.energy(volume)]! *= factor;
}

export const compressCylinder = (y: Float64Array, factor: number): void => {
  compress(y, CYLINDER, factor);
};

export const fillChest = (y: Float64Array, share = 1): void => {
  compress(y, CHEST, (share * engine.supply.pressure) / engine.atmosphere.pressure);
};

/** What a stepper answers to end a test. */
export const GIVEN_UP = { reason: 'step-limit', x: 0 } as const;

/** Undefined for a stretch against the crank angle. */
export const directions = (asked: readonly Asked[]): readonly (Direction | undefined)[] =>
  asked.map(({ direction }) => direction);
