/**
 * Settled running as a root: a state at top dead centre that one turn gives back.
 *
 * Gas in chest and cylinder forgets within a few turns, the flywheel remembers for hundreds. So the speed is led: from
 * turn to turn it goes towards where the energy gained per turn would be zero, by the secant through the last two turns,
 * in leaps no longer than the gas can follow. Near the root all unknowns are solved for together by Broyden's method,
 * one turn a step, and ever more closely.
 *
 * The way leads uphill in energy from the start: the root found is the first that the gain of energy meets, as in real
 * running, unless another hides within one leap.
 */
import { broyden } from '../numerics/broyden.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import type { TurnFailure } from './one-turn.ts';
import { SLOW } from './speeds.ts';

/** Longest leap, as a change of the logarithm of the speed. */
const LEAP = 0.5;

/** A leap shorter than this comes so near the root that all unknowns are solved for together. */
const NEAR = 0.2;

const MOST_TURNS = 80;

/** A way to run one turn, and how closely turns that it runs are to repeat themselves before a closer way takes over. */
export interface Level {
  /** The state one turn after a state at top dead centre, as far as the physical slots. */
  turn(y: Float64Array): Float64Array | TurnFailure;
  /** Share of the speed, and of any mass or energy of gas. */
  readonly speed: number;
  readonly gas: number;
}

export type RootSearch = { readonly turns: number } & (
  | { readonly kind: 'settled' }
  /** It cannot get round at the speed it had come to. */
  | { readonly kind: 'slow' }
  /** No root found within reach; nothing is said about the engine. */
  | { readonly kind: 'lost' }
  | { readonly kind: 'failed'; readonly failure: TurnFailure }
);

type Slots = EngineSystem['slots'];

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
  run(level: Level): boolean {
    this.turns += 1;
    const turn = level.turn(this.y);
    this.failure = 'reason' in turn ? turn : undefined;
    if (!('reason' in turn)) this.after = turn;
    return this.failure === undefined;
  }

  /** Kinetic energy that the last turn gained [J]. */
  get gain(): number {
    return 0.5 * this.moment * (this.after[SLOT.speed]! ** 2 - this.y[SLOT.speed]! ** 2);
  }

  end(): RootSearch {
    const { turns, failure } = this;
    if (failure === undefined) return { kind: 'lost', turns };
    return failure.reason === 'slow' ? { kind: 'slow', turns } : { kind: 'failed', failure, turns };
  }
}

/** Leads the speed near to the root: −d gain / d log speed there, or undefined when it got nowhere. */
function lead(search: Search, level: Level): number | undefined {
  const { y } = search;
  let last: { readonly logSpeed: number; readonly gain: number } | undefined;
  let slope = NaN;
  while (search.turns < MOST_TURNS && search.run(level)) {
    const { after, gain } = search;
    const logSpeed = Math.log(y[SLOT.speed]!);
    if (last && Math.abs(logSpeed - last.logSpeed) > 1e-6)
      slope = (last.gain - gain) / (logSpeed - last.logSpeed);
    last = { logSpeed, gain };
    const real = Math.log(after[SLOT.speed]!) - logSpeed;
    const wanted = slope > 0 ? gain / slope : Math.sign(gain) * LEAP;
    const leap = Math.abs(real) > LEAP ? real : Math.max(-LEAP, Math.min(LEAP, wanted));
    if (slope > 0 && Math.abs(leap) < NEAR) return slope;
    for (let i = 0; i < y.length; i += 1) y[i] = after[i]!;
    y[SLOT.speed] = Math.max(2 * SLOW, Math.exp(logSpeed + leap));
  }
  return undefined;
}

/** Solves for speed and gas together, with the last turn of the search for a beginning. */
function close(
  search: Search,
  { mass, firstTotal }: Slots,
  slope: number,
  levels: readonly Level[],
): boolean {
  const { y } = search;
  const firstMass = mass(0);
  // Unknowns: logarithm of the speed, then mass and energy of every volume as a share of what they are now.
  const size = 1 + firstTotal - firstMass;
  const scale = search.after.slice(firstMass, firstTotal);
  const residual = new Float64Array(size);
  const taken = new Float64Array(size);
  const solver = broyden(size);
  for (const level of levels) {
    // A closer level's turn from the same state is a new residual, not the effect of a step.
    if (level !== levels[0] && !search.run(level)) return false;
    let stepped = false;
    for (;;) {
      residual[0] = search.gain / slope;
      let gasError = 0;
      for (let i = 1; i < size; i += 1) {
        const slot = firstMass + i - 1;
        residual[i] = (search.after[slot]! - y[slot]!) / scale[i - 1]!;
        gasError = Math.max(gasError, Math.abs(residual[i]!));
      }
      if (stepped) solver.learn(taken, residual);
      if (Math.abs(residual[0]) < level.speed && gasError < level.gas) break;
      if (search.turns >= MOST_TURNS) return false;
      const step = solver.step(residual);
      const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      for (let i = 0; i < size; i += 1) taken[i] = step[i]! * Math.min(1, LEAP / longest);
      y[SLOT.speed]! *= Math.exp(taken[0]!);
      for (let i = 1; i < size; i += 1) y[firstMass + i - 1]! += taken[i]! * scale[i - 1]!;
      stepped = true;
      if (!search.run(level)) return false;
    }
  }
  return true;
}

/** Moves `y`, a state at top dead centre at crank angle 0, to settled running by turns of ever closer levels. */
export function settleByRoot(
  system: EngineSystem,
  y: Float64Array,
  levels: readonly [Level, ...Level[]],
): RootSearch {
  const search = new Search(system, y);
  const slope = lead(search, levels[0]);
  if (slope === undefined || !close(search, system.slots, slope, levels)) return search.end();
  return { kind: 'settled', turns: search.turns };
}
