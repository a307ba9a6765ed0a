/** The equations of an engine as integrators ask for them: against the crank angle, and against time. */
import type { KernelProblem, OdeProblem, StepChoices } from '../numerics/integrator.ts';
import { SLOT } from '../model/slots.ts';
import type { Direction, EngineSystem } from '../model/system.ts';

/** Jacobians of ours cost a call for what goes with the angle, and about one more for all the rest together. */
const ANGLE_JACOBIAN_COST = 2;
const TIME_JACOBIAN_COST = 3;

function kernelProblem(
  { sit }: EngineSystem,
  against: KernelProblem['against'],
  direction: Direction,
  jacobianCost: number,
): KernelProblem | undefined {
  return sit && { against, direction, jacobianCost, sit };
}

/** Turning forward, against the crank angle. Classes, so that code compiled for one engine serves for the next. */
export class AngleProblem implements OdeProblem {
  readonly dimension: number;
  readonly coupled: readonly number[];
  readonly choices: StepChoices | undefined;
  readonly inKernel: KernelProblem | undefined;
  private readonly system: EngineSystem;

  constructor(system: EngineSystem, keepsDonors: boolean) {
    this.system = system;
    this.inKernel = kernelProblem(system, 'angle', 1, ANGLE_JACOBIAN_COST);
    this.dimension = system.dimension;
    this.coupled = system.coupledInAngle;
    this.choices = keepsDonors ? system.donors : undefined;
  }

  derivative(angle: number, y: Float64Array, slopes: Float64Array): void {
    this.system.angleSlopes(angle, y, slopes);
  }

  jacobian(
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift: Float64Array,
  ): number {
    this.system.angleJacobian(angle, y, slopes, jacobian, drift);
    return ANGLE_JACOBIAN_COST;
  }
}

/** Turning either way or standing, against time. */
export class TimeProblem implements OdeProblem {
  readonly dimension: number;
  readonly coupled: readonly number[];
  readonly choices: StepChoices | undefined;
  readonly inKernel: KernelProblem | undefined;
  readonly autonomous = true;
  private readonly system: EngineSystem;
  private readonly direction: Direction;

  constructor(system: EngineSystem, direction: Direction, keepsDonors: boolean) {
    this.system = system;
    this.direction = direction;
    this.inKernel = kernelProblem(system, 'time', direction, TIME_JACOBIAN_COST);
    this.dimension = system.dimension;
    this.coupled = system.coupledInTime;
    const { donors } = system;
    this.choices = keepsDonors
      ? { ...donors, areStale: (_time, y) => donors.areStale(y[SLOT.crankAngle]!, y) }
      : undefined;
  }

  derivative(_time: number, y: Float64Array, slopes: Float64Array): void {
    this.system.timeSlopes(this.direction, y, slopes);
  }

  jacobian(_time: number, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): number {
    this.system.timeJacobian(this.direction, y, slopes, jacobian);
    return TIME_JACOBIAN_COST;
  }
}
