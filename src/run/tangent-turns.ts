/**
 * Turns along which the tangent is followed: rough ones, which lead to the root, and Newton's method on closer ones, each
 * measured, until one tells it.
 */
import type { EngineSystem } from '../model/system.ts';
import type { FollowedTurn } from './lead-to-root.ts';
import { measureTurn, type MeasuredTurn } from './measured-turn.ts';
import { oneTurn, type TurnFailure, type Watcher } from './one-turn.ts';
import type { Counters } from './result.ts';
import type { Stepper } from './stepper.ts';
import { TurnTangent } from './turn-tangent.ts';
import type { Closeness } from './turn-unknowns.ts';

/** Two or three do; more come of turns that jump, to which another way may do better. */
const PATIENCE = 8;

export class TangentTurns {
  turns = 0;
  private readonly system: EngineSystem;
  private readonly stepper: Stepper;
  private readonly tangent: TurnTangent;
  private readonly watcher: Watcher;

  constructor(system: EngineSystem, stepper: Stepper) {
    const tangent = new TurnTangent(system);
    this.system = system;
    this.stepper = stepper;
    this.tangent = tangent;
    this.watcher = {
      tangent: tangent.flow,
      onStop: (stop) => {
        tangent.keep(stop);
      },
    };
  }

  get counters(): Omit<Counters, 'turns'> {
    return this.stepper.counters;
  }

  /** The turn that begins at a state at top dead centre, without its measure. */
  follow(before: Float64Array): FollowedTurn | TurnFailure {
    this.turns += 1;
    this.tangent.begin();
    const after = before.slice();
    const failure = oneTurn(this.stepper, after, { tangent: this.tangent.flow });
    return failure ?? { after, found: this.tangent.stepToRoot({ before, after }) };
  }

  /**
   * The turn at the root, as a turn near it tells; `near` is how far from the root that may be. Moves `y` on the way.
   * Undefined when none comes near.
   */
  turnAtRoot(y: Float64Array, near: Closeness): MeasuredTurn | TurnFailure | undefined {
    const { system, stepper, tangent, watcher } = this;
    for (let turns = 0; turns < PATIENCE; turns += 1) {
      this.turns += 1;
      tangent.begin();
      const turn = measureTurn(system, stepper, y, watcher);
      if ('reason' in turn) return turn;
      const step = tangent.stepToRoot(turn);
      if (!step?.settles) return undefined;
      if (step.speed < near.speed && step.gas < near.gas) return tangent.turnAtRoot(turn, step);
      tangent.move(y, step);
    }
    return undefined;
  }
}
