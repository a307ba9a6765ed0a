/**
 * Turns by a law of our own in place of an engine's, for the search of settled running: the gain of kinetic energy in a turn
 * is a given function of the speed, and the gas in the cylinder goes a share of its way to where it settles.
 */
import { FIRST_VOLUME } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { Follow } from '../../src/run/lead-to-root.ts';
import type { TurnFailure } from '../../src/run/one-turn.ts';
import type { Level } from '../../src/run/settled-root.ts';
import { systemOf } from './drive.ts';
import { referenceSpec } from './reference-engine.ts';

export const rootSystem = systemOf(referenceSpec());
const { engine, slots } = rootSystem;
const CYLINDER = engine.ends[0].place - FIRST_VOLUME;

export interface TurnLaw extends Partial<Pick<Level, 'speed' | 'gas' | 'enough'>> {
  /** [J] at a speed [rad/s]. */
  readonly gain: (speed: number) => number;
  /** Whether the tangent of a turn at a speed is of use. */
  readonly tells?: (speed: number) => boolean;
  readonly failure?: (speed: number, turn: number) => TurnFailure | undefined;
}

/** With the states from which turns were asked for. */
export type AskedLevel = Level & { readonly asked: Float64Array[] };

/** At top dead centre, with the air of the room. */
export const atFirst = (speed: number): Float64Array => initialState(rootSystem, 0, speed);

/** Energy in the cylinder, in units of what it is at first; it settles at 1.3. */
export const cylinderEnergy = (y: Float64Array): number =>
  y[slots.energy(CYLINDER)]! / atFirst(0)[slots.energy(CYLINDER)]!;

export function levelByLaw({ gain, failure, tells: _tells, ...close }: TurnLaw): AskedLevel {
  const asked: Float64Array[] = [];
  const twiceInverseMoment = 2 / rootSystem.momentOfInertia(0);
  return {
    ...{ speed: 1e-4, gas: 1e-3, enough: true },
    ...close,
    asked,
    turn: (y) => {
      asked.push(y.slice());
      const speed = y[SLOT.speed]!;
      const failed = failure?.(speed, asked.length);
      if (failed) return failed;
      const after = y.slice();
      after[SLOT.speed] = Math.sqrt(Math.max(0, speed ** 2 + twiceInverseMoment * gain(speed)));
      const energy = cylinderEnergy(y);
      after[slots.energy(CYLINDER)]! *= (energy + 0.6 * (1.3 - energy)) / energy;
      return after;
    },
  };
}

/** The same turns with what their tangents would say, unless the law says that they tell nothing. */
export function followByLaw(law: TurnLaw): { readonly follow: Follow; readonly asked: Float64Array[] } {
  const level = levelByLaw(law);
  const { gain, tells = () => true } = law;
  const columns = rootSystem.coupledInAngle;
  const follow: Follow = (y) => {
    const after = level.turn(y);
    if ('reason' in after) return after;
    const speed = y[SLOT.speed]!;
    const hair = 1e-6 * speed;
    const perSpeed = (gain(speed + hair) - gain(speed - hair)) / (2 * hair);
    const moment = rootSystem.momentOfInertia(0);
    const step = new Float64Array(columns.length);
    step[0] = (-gain(speed) * moment * speed) / perSpeed;
    step[columns.indexOf(slots.energy(CYLINDER))] =
      (1.3 - cylinderEnergy(y)) * atFirst(0)[slots.energy(CYLINDER)]!;
    const share = step[0] / (0.5 * moment * speed ** 2);
    const gas = Math.abs(1.3 / cylinderEnergy(y) - 1);
    const found = { step, speed: Math.abs(share) / 2, gas, settles: perSpeed < 0 };
    return { after, found: tells(speed) ? found : undefined };
  };
  return { follow, asked: level.asked };
}

/** Adds noise to the gas that no step can foresee. */
export function noisy(level: AskedLevel): AskedLevel {
  let way = 1;
  const turn = (y: Float64Array): Float64Array => {
    const after = level.turn(y) as Float64Array;
    way = -way;
    after[slots.energy(CYLINDER)]! *= 1 + 0.05 * way;
    return after;
  };
  return { ...level, turn };
}

/** Falls along a straight line through zero at 40 rad/s. */
export const straight = (speed: number): number => 0.2 * (40 - speed);

/** How close turns are for a level that only leads. */
export const leading = { speed: 1e-2, gas: 4e-2, enough: false };
