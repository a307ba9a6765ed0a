/**
 * The comparison: an engine spun up from a push with the extrapolation method in time, turn after turn, until two
 * successive turns are the settled answer. It is told that answer, so that knowing when to stop costs it nothing. The
 * ledgers are followed, as in ours, and steer no step.
 */
import { fromSupply } from '../../src/model/from-supply.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import type { EventFunction } from '../../src/numerics/integrator.ts';
import { odexIntegrator } from '../../src/numerics/odex-integrator.ts';
import { tolerances } from '../../src/run/stepper-tolerances.ts';
import { isAnswer, type Push, type Turn } from './task.ts';

const FULL_TURN = 2 * Math.PI;
const MOST_STEPS = 1e7;
const MOST_TURNS = 3000;

/** From loose to tight. */
const TOLERANCES = [1e-3, 3e-4, 1e-4, 3e-5, 1e-5, 3e-6, 1e-6];

/** A spin-up that gains less than this share of its speed in so many turns goes nowhere else. */
const STALLED = { turns: 50, gain: 1e-4 };

export interface SpinUp {
  readonly settled: boolean;
  readonly last: Turn;
  readonly derivativeCalls: number;
  readonly turns: number;
}

/** Whether the speed after each turn has stopped to grow. */
function stalled(turns: readonly Turn[]): boolean {
  const before = turns.at(-1 - STALLED.turns);
  return before !== undefined && Math.abs(turns.at(-1)!.speed / before.speed - 1) < STALLED.gain;
}

/** All that has come out of the supply [kg]. */
function drawn({ engine, slots }: EngineSystem, y: Float64Array): number {
  return fromSupply(engine, y.subarray(slots.passageMass(0)));
}

export function odexSpinUp(system: EngineSystem, push: Push, settled: Turn, relative: number): SpinUp {
  const problem = {
    dimension: system.dimension,
    derivative: (_x: number, y: Float64Array, slopes: Float64Array) => {
      system.timeSlopes(1, y, slopes);
    },
  };
  const integrator = odexIntegrator(problem, tolerances(system, relative));
  const y = initialState(system, push.angle, push.speed);
  const turns: Turn[] = [];
  let stop = FULL_TURN * (Math.floor(push.angle / FULL_TURN) + 1);
  let before = { time: NaN, drawn: NaN };
  let near = 0;
  const passesStop: EventFunction = { value: (_x, component) => stop - component(SLOT.crankAngle) };
  const comesToRest: EventFunction = { value: (_x, component) => component(SLOT.speed) };
  while (near < 2 && turns.length < MOST_TURNS && !stalled(turns)) {
    const time = y[SLOT.time]!;
    const journey = { events: [passesStop, comesToRest], stepLimit: MOST_STEPS };
    const arrival = integrator.advance(time, y, time + 100, journey);
    if (arrival.reason !== 'event' || arrival.event !== 0) break;
    const now = { time: y[SLOT.time]!, drawn: drawn(system, y) };
    const turn = { speed: FULL_TURN / (now.time - before.time), air: now.drawn - before.drawn };
    turns.push(turn);
    before = now;
    stop += FULL_TURN;
    near = isAnswer(turn, settled) ? near + 1 : 0;
  }
  return {
    settled: near === 2,
    last: turns.at(-1) ?? { speed: NaN, air: NaN },
    derivativeCalls: integrator.counters.derivativeCalls,
    turns: turns.length,
  };
}

/** The loosest tolerance with which it settles where it should; none when it never does. */
export function loosestOdexTolerance(system: EngineSystem, push: Push, settled: Turn): number | undefined {
  return TOLERANCES.find((relative) => odexSpinUp(system, push, settled, relative).settled);
}
