/**
 * The equations of motion of one engine, as a derivative that allocates nothing, and their Jacobian.
 *
 * Three passes: state → pressures and temperatures; each passage's mass and enthalpy flow once; volumes add up, so that
 * what leaves one place enters the next to the last bit. Then the crank:
 *
 *   dm/dt = Σ ṁ_in − Σ ṁ_out      dU/dt = Σ ṁ cp T_upstream − p dV/dt + Q̇       p = (γ−1) U/V,  T = U/(m cv)
 *   J = J_flywheel + Σ M x′²      J ω̇ = Σ (p − p_atm) dV/dθ − Σ M x′ x″ ω² + gravity − friction − load
 *
 * Against time the state holds the speed ω. Against the crank angle, for an engine that turns forward, it holds the
 * kinetic energy E = ½ J ω² in its place: dE/dθ is the plain sum of the torques, and any method that keeps linear sums
 * keeps the energy of the engine, whatever its steps. The crank angle is then no unknown, but what the slopes are against.
 *
 * `direction` is +1 or −1 while the engine turns that way and 0 while it stands: friction is the sign of the motion, and
 * rest is a state of its own, not a rounded sign function.
 */
import type { StepChoices } from '../numerics/integrator.ts';
import type { Engine } from './engine.ts';
import type { Instant } from './instant.ts';
import { SystemJacobian } from './jacobian.ts';
import { Observer } from './observer.ts';
import { SLOT, slotsFor, type Slots } from './slots.ts';
import { SHARE } from './small-share.ts';
import { Sums } from './sums.ts';

export type Direction = -1 | 0 | 1;

export interface EngineSystem {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  /** The unknowns on which slopes depend, in the order of the columns of a Jacobian: against time, and against the angle. */
  readonly coupledInTime: readonly number[];
  readonly coupledInAngle: readonly number[];
  /** Slopes per second of a state that holds the speed. */
  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void;
  /** Slopes per radian, at a crank angle, of a state that holds the kinetic energy. */
  angleSlopes(angle: number, y: Float64Array, slopes: Float64Array): void;
  /** Row by row ∂slope/∂unknown, at the state for which slopes were last asked for, and those. */
  timeJacobian(direction: Direction, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void;
  /** The same, with ∂slope/∂angle in `drift`. */
  angleJacobian(
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift: Float64Array,
  ): void;
  /**
   * Where air turns round between unlike temperatures, slopes have a kink. Integrators that step over stiff stretches may
   * have the side it comes from kept for a whole step; x is the crank angle here.
   */
  readonly donors: StepChoices;
  /** What a state that holds the speed feels like; valid until the next call. */
  observe(y: Float64Array): Readonly<Instant>;
  /** The same for pressures and torques alone, as if the crank stood still. */
  observeAtRest(y: Float64Array): Readonly<Instant>;
  /** Of flywheel and pistons about the crank at a crank angle [kg m²]. */
  momentOfInertia(angle: number): number;
  /** Of all cylinder ends together at a crank angle, each counted by the way it pushes the crank [m³]. */
  pushedVolume(angle: number): number;
}

export interface SystemOptions {
  /** Whether the running totals of the ledgers are followed; without them the state ends where they would begin. */
  readonly totals: boolean;
}

/** A class, so that code compiled for one engine serves for the next. */
class System implements EngineSystem {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  readonly coupledInTime: readonly number[];
  readonly coupledInAngle: readonly number[];
  private readonly observed: Observer;
  private readonly sums: Sums;
  private readonly jacobians: SystemJacobian;
  readonly donors: StepChoices;
  private readonly moved: Float64Array;
  private readonly movedSlopes: Float64Array;

  constructor(engine: Engine, totals: boolean) {
    const leaksIn = [...new Set(engine.ends.flatMap((end) => end.leaksIn))];
    const slots = slotsFor(engine.volumes.length, engine.passages.length, leaksIn);
    const dimension = totals ? slots.dimension : slots.firstTotal;
    const gas = Array.from({ length: slots.firstTotal - slots.mass(0) }, (_, i) => slots.mass(0) + i);
    this.engine = engine;
    this.slots = slots;
    this.dimension = dimension;
    this.coupledInTime = [SLOT.crankAngle, SLOT.speed, ...gas];
    this.coupledInAngle = [SLOT.speed, ...gas];
    this.observed = new Observer(engine, slots);
    const { flows } = this.observed;
    this.donors = {
      keep: () => {
        flows.keepDonors();
      },
      release: () => {
        flows.releaseDonors();
      },
      restore: () => {
        flows.restoreDonors();
      },
      areStale: (angle, y) => this.observed.areDonorsStale(angle, y),
    };
    this.sums = new Sums(engine, slots, totals);
    this.jacobians = new SystemJacobian({ engine, slots, dimension, totals, sums: this.sums }, this.observed);
    this.moved = new Float64Array(dimension);
    this.movedSlopes = new Float64Array(dimension);
  }

  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void {
    const { observed, sums, dimension } = this;
    const { instant } = observed;
    observed.look(y);
    const speed = y[SLOT.speed]!;
    for (let i = 0; i < dimension; i += 1) slopes[i] = 0;
    slopes[SLOT.time] = 1;
    sums.flows(instant.massFlow, instant.enthalpyFlow, 1, slopes);
    sums.ends(instant, 1, speed, slopes);
    if (direction === 0) return;
    const driving = instant.gasTorque + instant.inertiaTorque + instant.gravityTorque;
    slopes[SLOT.crankAngle] = speed;
    slopes[SLOT.speed] = (driving - direction * resisting(instant)) / instant.momentOfInertia;
    sums.works(instant, direction * speed, speed, slopes);
  }

  angleSlopes(angle: number, y: Float64Array, slopes: Float64Array): void {
    const { observed, sums, dimension } = this;
    const { instant } = observed;
    const perRadian = 1 / observed.lookTurning(angle, y);
    for (let i = 0; i < dimension; i += 1) slopes[i] = 0;
    slopes[SLOT.crankAngle] = 1;
    slopes[SLOT.time] = perRadian;
    slopes[SLOT.speed] = instant.gasTorque + instant.gravityTorque - resisting(instant);
    sums.flows(instant.massFlow, instant.enthalpyFlow, perRadian, slopes);
    sums.ends(instant, perRadian, 1, slopes);
    sums.works(instant, 1, 1, slopes);
  }

  timeJacobian(direction: Direction, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void {
    const { jacobians, observed } = this;
    const { rates } = jacobians;
    const speed = y[SLOT.speed]!;
    rates.speed = speed;
    rates.time = 1;
    rates.angle = speed;
    rates.direction = direction;
    rates.perTorque = direction === 0 ? 0 : 1 / observed.instant.momentOfInertia;
    jacobians.begin();
    jacobians.writeGas(2, this.coupledInTime.length, y[SLOT.crankAngle]!, y, slopes, jacobian);
    for (let k = 0; k < 2; k += 1) this.writeDifference(k, direction, y, slopes, jacobian);
  }

  angleJacobian(
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift: Float64Array,
  ): void {
    const { jacobians, coupledInAngle, movedSlopes } = this;
    const { rates } = jacobians;
    rates.time = slopes[SLOT.time]!;
    rates.speed = 1 / rates.time;
    rates.angle = 1;
    rates.direction = 1;
    rates.perTorque = 1;
    jacobians.begin();
    jacobians.writeGas(1, coupledInAngle.length, angle, y, slopes, jacobian);
    jacobians.writeEnergy(0, coupledInAngle.length, angle, jacobian);
    const ahead = angle + SHARE * Math.max(1, Math.abs(angle));
    this.angleSlopes(ahead, y, movedSlopes);
    for (let i = 0; i < drift.length; i += 1) drift[i] = (movedSlopes[i]! - slopes[i]!) / (ahead - angle);
  }

  observe(y: Float64Array): Readonly<Instant> {
    this.observed.look(y);
    return this.observed.instant;
  }

  observeAtRest(y: Float64Array): Readonly<Instant> {
    this.observed.lookAtRest(y);
    return this.observed.instant;
  }

  momentOfInertia(angle: number): number {
    this.observed.mechanical.setPosition(angle);
    return this.observed.instant.momentOfInertia;
  }

  pushedVolume(angle: number): number {
    const { mechanical, instant } = this.observed;
    mechanical.setPosition(angle);
    return instant.endVolume.reduce((sum, volume) => sum + volume, 0);
  }

  /** Column k against time by a difference, the way the unknown is going. */
  private writeDifference(
    k: number,
    direction: Direction,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
  ): void {
    const { moved, movedSlopes } = this;
    const width = this.coupledInTime.length;
    const slot = this.coupledInTime[k]!;
    for (let i = 0; i < moved.length; i += 1) moved[i] = y[i]!;
    moved[slot] = y[slot]! + (slopes[slot]! < 0 ? -SHARE : SHARE) * Math.max(1, Math.abs(y[slot]!));
    const made = moved[slot] - y[slot]!;
    this.timeSlopes(direction, moved, movedSlopes);
    for (let i = 0; i < moved.length; i += 1) jacobian[i * width + k] = (movedSlopes[i]! - slopes[i]!) / made;
  }
}

const resisting = ({ bearingTorque, pistonTorque, gearTorque, loadTorque }: Instant): number =>
  bearingTorque + pistonTorque + gearTorque + loadTorque;

export function engineSystem(engine: Engine, { totals }: SystemOptions = { totals: true }): EngineSystem {
  return new System(engine, totals);
}
