/** Engines driven piece by piece, where a test wants to change or watch what a whole run keeps to itself. */
import type { Gas } from '../../src/gas/gas.ts';
import type { Chosen } from '../../src/kinds/kind.ts';
import { buildEngine, type Engine, type EnginePassage } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { hosePassage } from '../../src/parts/supply.ts';
import { measureCycle, type MeasuredCycle } from '../../src/run/cycle.ts';
import { motionFrom, type Motion } from '../../src/run/motion.ts';
import { settle } from '../../src/run/settle.ts';
import { engineStepper, type Stepper } from '../../src/run/stepper.ts';
import { traceRecorder } from '../../src/run/trace-recorder.ts';

export const systemOf = (spec: EngineSpec): EngineSystem => engineSystem(buildEngine(spec));

/** The same engine, its parts and passages built for another gas. */
export function engineWithGas(spec: EngineSpec, gas: Gas): Engine {
  const withGas = <Part>(own: Chosen<PartContext, Part>): Chosen<PartContext, Part> => ({
    ...own,
    build: (context) => own.build({ ...context, gas }),
  });
  const engine = buildEngine({
    ...spec,
    valve_gear: withGas(spec.valve_gear),
    leaks: spec.leaks.map(withGas),
  });
  const [hose, ...others] = engine.passages as [EnginePassage, ...EnginePassage[]];
  return { ...engine, gas, passages: [{ ...hose, passage: hosePassage(spec.supply, gas) }, ...others] };
}

interface Start {
  /** [rad], [rad/s]. */
  readonly angle: number;
  readonly speed: number;
  readonly longestTime: number;
}

/** A motion about to begin. */
export function motionOf(
  system: EngineSystem,
  { angle, speed, longestTime }: Start,
  stepper?: Stepper,
): Motion {
  return motionFrom({
    system,
    stepper: stepper ?? engineStepper(system),
    recorder: traceRecorder(system),
    y: initialState(system, angle, speed),
    longestTime,
  });
}

/** The measure of one turn from a state at top dead centre. */
export function measuredTurn(system: EngineSystem, state: Float64Array): MeasuredCycle {
  const turn = measureCycle(system, engineStepper(system), state);
  if ('reason' in turn) throw new Error(`the turn gave up: ${turn.reason}`);
  return turn;
}

/** Mean speed [rad/s] of a measured turn. */
export const turnSpeed = ({ before, after }: MeasuredCycle): number =>
  (2 * Math.PI) / (after[SLOT.time]! - before[SLOT.time]!);

/** Settled speed [rad/s] reached from a start. */
export function settledSpeed(system: EngineSystem, start: Start): number {
  const motion = motionOf(system, start);
  const { end } = settle(motion);
  if (end.kind !== 'settled') throw new Error(`the engine did not settle: ${end.kind}`);
  return turnSpeed(measuredTurn(system, motion.y));
}

/** The state after a number of turns from top dead centre. */
export function stateAfterTurns(system: EngineSystem, speed: number, turns: number): Float64Array {
  let y = initialState(system, 0, speed);
  for (let i = 0; i < turns; i += 1) y = measuredTurn(system, y).after;
  return y;
}
