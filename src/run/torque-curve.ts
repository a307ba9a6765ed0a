/**
 * What the engine could drive at any speed: its crank is held at one speed, the gas left to settle, and what the pistons
 * bring the shaft in a turn beyond the engine's own friction is taken.
 *
 *   torque = (∮ p dV − bearings − pistons − valve gear) / 2π
 *
 * The load plays no part. Held means: a flywheel so large that no turn changes its speed; the torque is the mean over the
 * turn. Where the curve crosses that of the load from above, the engine can settle; where it crosses from below, it runs
 * away upward or dies downward from there.
 */
import type { Engine } from '../model/engine.ts';
import { fromSupply } from '../model/from-supply.ts';
import { initialState } from '../model/initial-state.ts';
import { SLOT, type Slots } from '../model/slots.ts';
import { engineSystem } from '../model/system.ts';
import type { TorqueCurve } from './drive-result.ts';
import { measureTurn, type MeasuredTurn } from './measured-turn.ts';
import { engineStepper, QUICK } from './stepper.ts';
import { turnUnknowns } from './turn-unknowns.ts';

/** First speed, ratio of one to the next, and a speed beyond which no workshop engine is asked [rad/s]. */
const SLOWEST = 2;
const RATIO = 1.3;
const FASTEST = 1100;

/** So much heavier is the flywheel of a held crank. */
const HEAVY = 1e6;

const CLOSE = { speed: Infinity, gas: 5e-3 };
const MOST_TURNS = 12;

interface Point {
  readonly speed: number;
  readonly torque: number;
  readonly airMassFlow: number;
}

/** The same engine without the leaks past its valves, pistons and glands. */
export function withoutLeaks(engine: Engine): Engine {
  return {
    ...engine,
    passages: engine.passages.map((one) => {
      if (one.role !== 'leak') return one;
      const { flow: _, ...passage } = one.passage;
      return { ...one, passage: { ...passage, massFlow: () => 0 } };
    }),
  };
}

function held(engine: Engine): Engine {
  const { flywheel } = engine;
  return {
    ...engine,
    flywheel: { ...flywheel, momentOfInertia: HEAVY * flywheel.momentOfInertia },
    load: { torque: () => 0 },
  };
}

function shaftTorque({ after }: MeasuredTurn, slots: Slots): number {
  const taken = after[slots.bearingWork]! + after[slots.pistonWork]! + after[slots.gearWork]!;
  return (after[slots.gasWork]! - taken) / (2 * Math.PI);
}

/** Follows the engine from a slow speed upward to where it drives nothing any more. */
function* pointsUpward(engine: Engine): Generator<Point, undefined> {
  const system = engineSystem(held(engine));
  const stepper = engineStepper(system, QUICK);
  const y = initialState(system, 0, SLOWEST);

  /** Turns at the speed of `y` until the gas repeats itself; undefined when it does not come to that. */
  const settledTurn = (): MeasuredTurn | undefined => {
    const unknowns = turnUnknowns(system, y);
    for (let turns = 0; turns < MOST_TURNS; turns += 1) {
      const turn = measureTurn(system, stepper, y);
      if ('reason' in turn) return undefined;
      unknowns.look(turn.after);
      if (unknowns.isWithin(CLOSE)) return turn;
      unknowns.step();
    }
    return undefined;
  };

  let found = 0;
  for (let speed = SLOWEST; speed < FASTEST; speed *= RATIO) {
    y[SLOT.speed] = speed;
    const turn = settledTurn();
    if (!turn) continue;
    const torque = shaftTorque(turn, system.slots);
    const period = turn.after[SLOT.time]! - turn.before[SLOT.time]!;
    yield { speed, torque, airMassFlow: fromSupply(engine, turn.passageMass) / period };
    found += 1;
    if (torque <= 0 && found > 1) break;
  }
  return undefined;
}

export function torqueCurve(engine: Engine): TorqueCurve {
  const points = [...pointsUpward(engine)];
  const column = (key: keyof Point): Float64Array => Float64Array.from(points, (point) => point[key]);
  return { speed: column('speed'), torque: column('torque'), airMassFlow: column('airMassFlow') };
}

/** The first point of the curve alone: torque [N m] and speed [rad/s] of the slowest turning there is. */
export function slowestTurning(
  engine: Engine,
): { readonly speed: number; readonly torque: number } | undefined {
  return pointsUpward(engine).next().value;
}
