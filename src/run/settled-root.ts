/**
 * Settled running as a root: a state at top dead centre that one turn gives back.
 *
 * Gas in chest and cylinder forgets within a few turns, the flywheel remembers for hundreds. So the speed is led: from
 * turn to turn it goes towards where the energy gained per turn would be zero, by the secant through the last two turns,
 * in leaps no longer than the gas can follow. Near the root all unknowns are solved for together by Broyden's method,
 * one turn a step, and ever more closely; or, where ledgers are all that is asked for, by the tangent of a turn
 * (tangent-turns.ts).
 *
 * The way leads uphill in energy from the start: the root found is the first that the gain of energy meets, as in real
 * running, unless another hides within one leap.
 */
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { oneTurn, type TurnFailure } from './one-turn.ts';
import { SLOW } from './speeds.ts';
import type { Stepper } from './stepper.ts';
import { turnUnknowns, type Closeness, type TurnUnknowns } from './turn-unknowns.ts';

/** Longest leap, as a factor of the speed. */
const LEAP = 2.5;

/** A leap shorter than this share of the speed comes so near the root that all unknowns are solved for together. */
const NEAR = 0.1;

const MOST_TURNS = 80;

/** Turns so slow are the last that are tried [rad/s]. */
const LEAST = 2 * SLOW;

/** A way to run one turn, and how closely turns that it runs are to repeat themselves before a closer way takes over. */
export interface Level extends Closeness {
  /** The state one turn after a state at top dead centre, as far as the physical slots. */
  turn(y: Float64Array): Float64Array | TurnFailure;
  /** True when turns that repeat themselves so closely are an answer. */
  readonly enough: boolean;
}

/** Turns run by a stepper. */
export const turnsBy =
  (stepper: Stepper): Level['turn'] =>
  (start) => {
    const after = start.slice();
    return oneTurn(stepper, after) ?? after;
  };

/** A way that runs turns by a stepper. */
export const levelOf = (stepper: Stepper, close: Pick<Level, 'speed' | 'gas' | 'enough'>): Level => ({
  ...close,
  turn: turnsBy(stepper),
});

/** A search that found nothing. */
type NoRoot = { readonly turns: number } &
  /** It cannot get round at the speed it had come to. */
  (
    | { readonly kind: 'slow' }
    /** No root found within reach; nothing is said about the engine. */
    | { readonly kind: 'lost' }
    | { readonly kind: 'failed'; readonly failure: TurnFailure }
  );

export type RootSearch =
  | NoRoot
  | /** `level` is the number of the one whose turn repeated itself. */ {
      readonly kind: 'settled';
      readonly level: number;
      readonly turns: number;
    };

export type Lead = NoRoot | { readonly kind: 'near'; readonly turns: number };

/** The turns of one search, one after the other. */
class Search {
  turns = 0;
  after: Float64Array;
  /** Why the last turn was not finished. */
  failure: TurnFailure | undefined;
  private readonly moment: number;
  readonly y: Float64Array;

  constructor(system: EngineSystem, y: Float64Array) {
    this.moment = system.momentOfInertia(0);
    this.y = y;
    this.after = y;
  }

  /** Runs a turn from `y` into `after`; false when it was not finished. */
  run(level: Pick<Level, 'turn'>): boolean {
    this.turns += 1;
    const turn = level.turn(this.y);
    this.failure = 'reason' in turn ? turn : undefined;
    if (!('reason' in turn)) this.after = turn;
    return this.failure === undefined;
  }

  /** Kinetic energy that the last turn gained [J]. */
  get gain(): number {
    return 0.5 * this.moment * (square(this.after[SLOT.speed]!) - square(this.y[SLOT.speed]!));
  }

  end(): NoRoot {
    const { turns, failure } = this;
    if (failure === undefined) return { kind: 'lost', turns };
    return failure.reason === 'slow' ? { kind: 'slow', turns } : { kind: 'failed', failure, turns };
  }
}

/**
 * Leads the speed near to the root: −d gain / d log speed there, or undefined when it got nowhere. Gains fall with the speed
 * nearly along a straight line, as torques do.
 */
function lead(search: Search, level: Pick<Level, 'turn'>): number | undefined {
  const { y } = search;
  let last: { readonly speed: number; readonly gain: number } | undefined;
  let slope = NaN;
  while (search.turns < MOST_TURNS && search.run(level)) {
    const { after, gain } = search;
    const speed = y[SLOT.speed]!;
    if (last && Math.abs(speed / last.speed - 1) > 1e-6) slope = (last.gain - gain) / (speed - last.speed);
    last = { speed, gain };
    const real = after[SLOT.speed]!;
    const wanted = slope > 0 ? speed + gain / slope : gain > 0 ? Infinity : 0;
    if (slope > 0 && Math.abs(wanted / speed - 1) < NEAR) return slope * speed;
    for (let i = 0; i < y.length; i += 1) y[i] = after[i]!;
    y[SLOT.speed] = Math.max(LEAST, withinLeap(speed, wanted), real > speed * LEAP ? real : 0);
    // What is slower still is for those who follow it for real.
    if (speed === LEAST && y[SLOT.speed] === LEAST) return undefined;
  }
  return undefined;
}

const withinLeap = (speed: number, wanted: number): number =>
  Math.min(speed * LEAP, Math.max(speed / LEAP, wanted));

/**
 * Most turns at one level before the noise of its steps is taken to hide the rest: at the first, which only leads near, and
 * at the others. Behind the last there is nothing but to spin on for real, which costs a hundred turns.
 */
const FIRST_PATIENCE = 3;
const PATIENCE = 6;
const LAST_PATIENCE = 15;

/**
 * Solves for speed and gas together, with the last turn of the search for a beginning: the number of the level. What a turn
 * of one level shows is mended before the next level takes over.
 */
function close(search: Search, unknowns: TurnUnknowns, levels: readonly Level[]): number | undefined {
  unknowns.look(search.after);
  for (const [i, level] of levels.entries()) {
    const most = i === 0 ? FIRST_PATIENCE - 1 : i === levels.length - 1 ? LAST_PATIENCE : PATIENCE;
    for (let turns = 0; turns < most; turns += 1) {
      unknowns.step();
      if (turns === 0 && i > 0) unknowns.startAgain();
      if (!search.run(level)) return undefined;
      unknowns.look(search.after);
      if (unknowns.isWithin(level)) break;
    }
    if (level.enough && unknowns.isWithin(level)) return i;
  }
  return undefined;
}

/**
 * Air that was pressed into chest and hose while they filled is warm, and long in being flushed out; what will stand there
 * in settled running comes from the supply and has its temperature, or nearly.
 */
function flush({ engine, slots }: EngineSystem, y: Float64Array): void {
  const { gas, supply, volumes } = engine;
  for (const [i, { fixedVolume }] of volumes.entries())
    if (fixedVolume !== undefined)
      y[slots.mass(i)] = y[slots.energy(i)]! / (gas.heatCapacityAtConstantVolume * supply.temperature);
}

/**
 * Moves `y`, a state at top dead centre, by turns of one kind to where the secant through the last two expects the root, with
 * the gas as the last one left it.
 */
export function leadToRoot(system: EngineSystem, y: Float64Array, turn: Level['turn']): Lead {
  const search = new Search(system, y);
  flush(system, y);
  const slope = lead(search, { turn });
  if (search.failure || slope === undefined) return search.end();
  const speed = y[SLOT.speed]! * (1 + search.gain / slope);
  y.set(search.after.subarray(0, y.length));
  y[SLOT.speed] = speed;
  return { kind: 'near', turns: search.turns };
}

/**
 * Moves `y`, a state at top dead centre, to settled running by turns of ever closer levels. A state that is near already
 * comes with its slope, −d gain / d log speed [J].
 */
export function settleByRoot(
  system: EngineSystem,
  y: Float64Array,
  levels: readonly [Level, ...Level[]],
  slopeNearby?: number,
): RootSearch {
  const search = new Search(system, y);
  let slope = slopeNearby;
  if (slope === undefined) {
    flush(system, y);
    slope = lead(search, levels[0]);
  } else search.run(levels[0]);
  if (search.failure || slope === undefined) return search.end();
  const level = close(search, turnUnknowns(system, y, slope), levels);
  return level === undefined ? search.end() : { kind: 'settled', level, turns: search.turns };
}
