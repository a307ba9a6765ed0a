/** Contract of the valve-gear family: ports, sealing gaps and drag, as functions of the crank angle. */
import type { Dimension } from '../../kinds/parameter.ts';
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Passage, Port } from '../passage.ts';

/** Crank angles [rad, 0 to 2π) of the four events, in the trade's words. */
export interface ValveEvents {
  /** Steam or air begins to enter. */
  readonly admission: number;
  /** The supply is shut off; expansion begins. */
  readonly cutOff: number;
  /** The exhaust opens. */
  readonly release: number;
  /** The exhaust shuts; what is left is compressed. */
  readonly compression: number;
}

/** A size that follows from the timing and that the builder has to make. */
export interface DerivedSize {
  readonly label: string;
  readonly value: number;
  readonly dimension: Dimension;
  /** Significant digits worth showing, if more than usual. */
  readonly digits?: number;
}

/** What presses a valve on its face [Pa absolute], as one cylinder end feels it. */
export interface GearPressures {
  readonly chest: number;
  readonly cylinder: number;
  /** In the other end of a double-acting cylinder; that of the room where there is none. */
  readonly otherEnd: number;
}

export interface Reversal {
  /** All angles of this one count in the other direction. */
  readonly gear: () => ValveGear;
  /** It can be set over, or is alike both ways: it is meant to drive the engine that way. */
  readonly serves: boolean;
}

export interface ValveGear {
  readonly ports: readonly Port[];
  /** Leaks past the valve's own sealing faces; they change as it moves. */
  readonly sealingGaps: readonly Passage[];
  /** Every crank angle in [0, 2π), ascending, at which a port or gap starts, ends or kinks. */
  readonly edges: readonly number[];
  readonly events: ValveEvents;
  readonly derivedSizes: readonly DerivedSize[];
  /** Torque at the crankshaft [N m] that drives the gear at crank angle θ and speed ω ≥ 0 under pressure. */
  dragTorque(angle: number, speed: number, pressures: GearPressures): number;
  /** That torque, when it never changes. */
  readonly steadyDrag?: number;
  /** Diameter of the smallest base circle [m] on which its cams can be cut, of a gear that has any; takes a while. */
  readonly smallestBaseCircle?: () => number;
  /** What it is for an engine that runs the other way; without it, the same thing passed backwards (mirrored.ts). */
  readonly reverse?: Reversal;
}

/** The drag of a gear that takes the same torque [N m] wherever it stands. */
export const steadyDrag = (torque: number): Pick<ValveGear, 'dragTorque' | 'steadyDrag'> => ({
  dragTorque: () => torque,
  steadyDrag: torque,
});

export type ValveGearFamily = Family<PartContext, ValveGear>;

/** Edges as the contract wants them: wrapped into one turn, ascending, each once. */
export function orderedEdges(angles: readonly number[]): number[] {
  const turn = 2 * Math.PI;
  const wrapped = angles.map((angle) => ((angle % turn) + turn) % turn).sort((a, b) => a - b);
  return wrapped.filter((angle, i) => i === 0 || angle - wrapped[i - 1]! > 1e-9);
}
