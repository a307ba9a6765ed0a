/** Newton's method on the turns of an engine: turns near the root, each measured and its tangent followed, until one tells the root. */
import type { EngineSystem } from '../model/system.ts';
import { measureTurn, type MeasuredTurn } from './measured-turn.ts';
import type { TurnFailure, Watcher } from './one-turn.ts';
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
  private readonly near: Closeness;
  private readonly tangent: TurnTangent;
  private readonly watcher: Watcher;

  /** `near`: how far from the root a turn may be that is to tell it. */
  constructor(system: EngineSystem, stepper: Stepper, near: Closeness) {
    const tangent = new TurnTangent(system);
    this.system = system;
    this.stepper = stepper;
    this.near = near;
    this.tangent = tangent;
    this.watcher = {
      tangent: tangent.flow,
      onStop: (stop) => {
        tangent.keep(stop);
      },
    };
  }

  get counters(): Omit<Counters, 'turns'> {
    const { derivativeCalls, acceptedSteps } = this.stepper.counters;
    return { derivativeCalls, acceptedSteps };
  }

  /** The turn at the root, as a turn near it tells; moves `y` on the way. Undefined when none comes near. */
  turnAtRoot(y: Float64Array): MeasuredTurn | TurnFailure | undefined {
    const { system, stepper, tangent, watcher, near } = this;
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
