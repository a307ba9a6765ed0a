/**
 * Settled running as a root: a state at top dead centre that one turn gives back. From near it, where running for real has
 * come to or is all but there, speed and gas are solved for together by Broyden's method, one turn a step, and ever more
 * closely. From afar lead-to-root.ts leads there.
 */
import type { EngineSystem } from '../model/system.ts';
import { oneTurn, type TurnFailure } from './one-turn.ts';
import type { Stepper } from './stepper.ts';
import { turnUnknowns, type Closeness, type TurnUnknowns } from './turn-unknowns.ts';

/** A way to run one turn, and how closely turns that it runs are to repeat themselves before a closer way takes over. */
export interface Level extends Closeness {
  /** The state one turn after a state at top dead centre, as far as the physical slots. */
  turn(y: Float64Array): Float64Array | TurnFailure;
  /** True when turns that repeat themselves so closely are an answer. */
  readonly enough: boolean;
}

/** A way that runs turns by a stepper. */
export const levelOf = (stepper: Stepper, close: Pick<Level, 'speed' | 'gas' | 'enough'>): Level => ({
  ...close,
  turn: (start) => {
    const after = start.slice();
    return oneTurn(stepper, after) ?? after;
  },
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

/** The turns of one search, one after the other. */
class Search {
  turns = 0;
  after: Float64Array;
  /** Why the last turn was not finished. */
  failure: TurnFailure | undefined;
  private readonly y: Float64Array;

  constructor(y: Float64Array) {
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

  end(): NoRoot {
    const { turns, failure } = this;
    if (failure === undefined) return { kind: 'lost', turns };
    return failure.reason === 'slow' ? { kind: 'slow', turns } : { kind: 'failed', failure, turns };
  }
}

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
 * Moves `y`, a state at top dead centre near the root, to settled running by turns of ever closer levels. `slope` is
 * −d gain / d log speed there [J].
 */
export function settleByRoot(
  system: EngineSystem,
  y: Float64Array,
  levels: readonly [Level, ...Level[]],
  slope: number,
): RootSearch {
  const search = new Search(y);
  if (!search.run(levels[0])) return search.end();
  const level = close(search, turnUnknowns(system, y, slope), levels);
  return level === undefined ? search.end() : { kind: 'settled', level, turns: search.turns };
}
