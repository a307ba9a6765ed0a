/**
 * How the end of a turn moves with its beginning, and so where a turn begins that repeats itself: Newton's method, from one
 * turn. With Φ the tangent of the turn and r what the turn changed in each unknown,
 *
 *   (I − Φ) Δ = r
 *
 * leads to the root, and Φ Δ is by how much everything else that the turn came to, its ledgers among them, is different
 * there. Errors of both go with the square of Δ.
 */
import { DenseLinearSolver } from '../numerics/dense-linear-solver.ts';
import { TangentFlow } from '../numerics/tangent-flow.ts';
import type { EngineSystem } from '../model/system.ts';
import type { EventState, MeasuredTurn } from './measured-turn.ts';
import { holdEnergy, holdSpeed } from './turning-view.ts';

/** Longest step of any unknown, as a share of what it is. */
const LONGEST_STEP = 0.3;

/** From one turn to the one that repeats itself. */
export interface StepToRoot {
  /** The step of the speed as a share of it, and the longest of all masses and energies of gas. */
  readonly speed: number;
  readonly gas: number;
  /** Of the unknowns that the turn begins with, not limited. */
  readonly step: Float64Array;
  /** Whether the wheel gains less the faster it turns: only then does running settle here. */
  readonly settles: boolean;
}

export class TurnTangent {
  /** Carried along by the steps of the turn. */
  readonly flow: TangentFlow;
  private readonly system: EngineSystem;
  private readonly columns: readonly number[];
  private readonly solver: DenseLinearSolver;
  private readonly atStops = new Map<number, Float64Array>();

  constructor(system: EngineSystem) {
    const { dimension, coupledInAngle } = system;
    const width = coupledInAngle.length;
    this.system = system;
    this.columns = coupledInAngle;
    this.flow = new TangentFlow(dimension, width);
    this.solver = new DenseLinearSolver(width);
    const identity = new Float64Array(dimension * width);
    for (const [k, component] of coupledInAngle.entries()) identity[component * width + k] = 1;
    this.atStops.set(0, identity);
  }

  /** A turn is about to begin, at top dead centre. */
  begin(): void {
    this.flow.begin();
  }

  /** The turn has come to a stop. */
  keep(stop: number): void {
    this.atStops.set(stop, this.flow.tangent());
  }

  /** Undefined where the tangent does not tell. */
  stepToRoot({ before, after }: Pick<MeasuredTurn, 'before' | 'after'>): StepToRoot | undefined {
    const { solver, columns } = this;
    const width = columns.length;
    const [from, to] = [this.holding(before), this.holding(after)];
    const tangent = this.flow.tangent();
    for (let r = 0, at = 0; r < width; r += 1)
      for (let k = 0; k < width; k += 1, at += 1)
        solver.matrix[at] = (r === k ? 1 : 0) - tangent[columns[r]! * width + k]!;
    if (!solver.factorise()) return undefined;
    const step = Float64Array.from(columns, (component) => to[component]! - from[component]!);
    solver.solve(step);
    if (!step.every((value) => Number.isFinite(value))) return undefined;
    const push = new Float64Array(width);
    push[0] = 1;
    solver.solve(push);
    const shares = step.map((value, k) => Math.abs(value / from[columns[k]!]!));
    return {
      speed: shares[0]! / 2,
      gas: shares.subarray(1).reduce((most, share) => Math.max(most, share), 0),
      step,
      settles: push[0] > 0,
    };
  }

  /** Moves the beginning of a turn towards the root, by no more than it can be relied on. */
  move(y: Float64Array, { step, speed, gas }: StepToRoot): void {
    const share = Math.min(1, LONGEST_STEP / Math.max(2 * speed, gas));
    holdEnergy(this.system, y);
    for (const [k, component] of this.columns.entries()) y[component]! += share * step[k]!;
    holdSpeed(this.system, y);
  }

  /** The turn at the root, from the measure of the one that was followed. */
  turnAtRoot(turn: MeasuredTurn, found: StepToRoot): MeasuredTurn {
    const { system } = this;
    const { slots, engine } = system;
    const tangent = this.flow.tangent();
    const before = turn.before.slice();
    this.move(before, found);
    const after = this.holding(turn.after);
    for (let i = 0; i < after.length; i += 1) after[i]! += this.change(tangent, i, found);
    holdSpeed(system, after);
    const atRoot = (event: EventState, component: number): EventState => ({
      ...event,
      mass: event.mass + this.change(this.atStops.get(event.stop)!, component, found),
    });
    return {
      ...turn,
      before,
      after,
      passageMass: engine.passages.map((_, i) => after[slots.passageMass(i)]!),
      ends: turn.ends.map(({ atAdmission, atCutOff }, i) => {
        const mass = slots.mass(engine.volumes.length - engine.ends.length + i);
        return { atAdmission: atRoot(atAdmission, mass), atCutOff: atRoot(atCutOff, mass) };
      }),
    };
  }

  private change(tangent: Float64Array, component: number, { step }: StepToRoot): number {
    const row = component * step.length;
    let sum = 0;
    for (let k = 0; k < step.length; k += 1) sum += tangent[row + k]! * step[k]!;
    return sum;
  }

  /** A copy that holds the kinetic energy in the place of the speed. */
  private holding(y: Float64Array): Float64Array {
    const held = y.slice();
    holdEnergy(this.system, held);
    return held;
  }
}
