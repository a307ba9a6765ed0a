/**
 * The comparison: an engine spun up from a push with the extrapolation method in time, turn after turn, until two
 * successive turns are the settled answer. It is told that answer, so that knowing when to stop costs it nothing. Of the
 * ledgers it follows the air from the supply alone, which steers no step.
 */
import { SUPPLY } from '../../src/model/engine.ts';
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

/** The unknowns of a state that are followed: those on which slopes depend, and the air through passages from the supply. */
function followed({ engine, slots }: EngineSystem): readonly number[] {
  const passages = [...engine.passages.keys()].filter((i) => engine.passages[i]!.from === SUPPLY);
  return [...Array.from({ length: slots.firstTotal }, (_, i) => i), ...passages.map(slots.passageMass)];
}

/** All that has come out of the supply [kg]. */
function drawn({ slots }: EngineSystem, y: Float64Array): number {
  return y.subarray(slots.firstTotal).reduce((sum, air) => sum + air, 0);
}

export function odexSpinUp(system: EngineSystem, push: Push, settled: Turn, relative: number): SpinUp {
  const slots = followed(system);
  const [whole, wholeSlopes] = [new Float64Array(system.dimension), new Float64Array(system.dimension)];
  const problem = {
    dimension: slots.length,
    derivative: (_x: number, y: Float64Array, slopes: Float64Array) => {
      for (let i = 0; i < slots.length; i += 1) whole[slots[i]!] = y[i]!;
      system.timeSlopes(1, whole, wholeSlopes);
      for (let i = 0; i < slots.length; i += 1) slopes[i] = wholeSlopes[slots[i]!]!;
    },
  };
  const start = initialState(system, push.angle, push.speed);
  const allowed = tolerances(system, relative).absolute;
  const absolute = Float64Array.from(slots, (slot) => allowed[slot]!);
  const integrator = odexIntegrator(problem, { relative, absolute });
  const y = Float64Array.from(slots, (slot) => start[slot]!);
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
