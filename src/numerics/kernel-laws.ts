/** The questions of the kernel to its host, src/kernel/host.ts, as laws that take their numbers one by one. */
import { EXCHANGE } from '../kernel/fixed-places.ts';
import type { Host } from '../kernel/host.ts';

export interface EngineLaws {
  /** How far a passage in the list of laws is open at a crank angle of its own [rad] and a speed [rad/s]. */
  opening(which: number, angle: number, speed: number): number;
  /** Mass flow [kg/s] of a passage without a common law; all air has the temperature T [K] of its donor. */
  flow(passage: number, angle: number, pFrom: number, t: number, pTo: number, speed: number): number;
  /** Torque [N m] that drives the gear of a cylinder. */
  drag(
    cylinder: number,
    angle: number,
    speed: number,
    chest: number,
    pressure: number,
    otherEnd: number,
  ): number;
  load(speed: number): number;
  wallHeat(area: number, temperature: number, pressure: number, speed: number): number;
}

/** What the kernel asks about the integrator that is seated. */
export type StepHost = Pick<Host, 'slopes' | 'attempt' | 'lengthToChange'> & {
  look(x: number, length: number): boolean;
  show(): boolean;
};

/** The numbers of a question, and of its answer. */
const [FIRST, SECOND, THIRD, FOURTH, FIFTH] = [
  EXCHANGE,
  EXCHANGE + 1,
  EXCHANGE + 2,
  EXCHANGE + 3,
  EXCHANGE + 4,
];

/** Answers by whatever laws are current, in the memory of a kernel. */
export const hostOf = (memory: Float64Array, current: () => EngineLaws, steps: () => StepHost): Host => ({
  opening: (which) => {
    memory[FIRST] = current().opening(which, memory[FIRST]!, memory[SECOND]!);
  },
  flow: (passage) => {
    memory[FIRST] = current().flow(
      passage,
      memory[FIRST]!,
      memory[SECOND]!,
      memory[THIRD]!,
      memory[FOURTH]!,
      memory[FIFTH]!,
    );
  },
  drag: (cylinder) => {
    memory[FIRST] = current().drag(
      cylinder,
      memory[FIRST]!,
      memory[SECOND]!,
      memory[THIRD]!,
      memory[FOURTH]!,
      memory[FIFTH]!,
    );
  },
  load: () => {
    memory[FIRST] = current().load(memory[FIRST]!);
  },
  wallHeat: () => {
    memory[FIRST] = current().wallHeat(memory[FIRST]!, memory[SECOND]!, memory[THIRD]!, memory[FOURTH]!);
  },
  slopes: (x, state, slopes) => {
    steps().slopes(x, state, slopes);
  },
  look: (x, length) => Number(steps().look(x, length)),
  attempt: (length) => steps().attempt(length),
  lengthToChange: () => steps().lengthToChange(),
  show: () => Number(steps().show()),
});
