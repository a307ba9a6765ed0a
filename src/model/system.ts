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
 * keeps the energy of the engine, whatever its steps.
 *
 * `direction` is +1 or −1 while the engine turns that way and 0 while it stands: friction is the sign of the motion, and
 * rest is a state of its own, not a rounded sign function.
 */
import type { Engine } from './engine.ts';
import type { Instant } from './instant.ts';
import { systemJacobian } from './jacobian.ts';
import { Observer } from './observer.ts';
import { SLOT, slotsFor, type Slots } from './slots.ts';
import { Sums } from './sums.ts';

export type Direction = -1 | 0 | 1;

export interface EngineSystem {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  /** The unknowns on which slopes depend, in the order of the columns of a Jacobian. */
  readonly coupled: readonly number[];
  /** Slopes per second of a state that holds the speed. */
  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void;
  /** Slopes per radian of a state that holds the kinetic energy. */
  angleSlopes(y: Float64Array, slopes: Float64Array): void;
  /** Row by row ∂slope/∂unknown, at a state and its slopes. */
  timeJacobian(direction: Direction, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void;
  angleJacobian(y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void;
  /** What a state that holds the speed feels like; valid until the next call. */
  observe(y: Float64Array): Readonly<Instant>;
  /** Of flywheel and pistons about the crank at a crank angle [kg m²]. */
  momentOfInertia(angle: number): number;
}

export interface SystemOptions {
  /** Whether the running totals of the ledgers are followed; without them the state ends where they would begin. */
  readonly totals: boolean;
}

export function engineSystem(engine: Engine, { totals }: SystemOptions = { totals: true }): EngineSystem {
  const { passages, volumes } = engine;
  const slots = slotsFor(volumes.length, passages.length);
  const dimension = totals ? slots.dimension : slots.firstTotal;
  const physical = Array.from({ length: slots.firstTotal }, (_, slot) => slot);
  const coupled = physical.filter((slot) => slot !== SLOT.time);
  const observed = new Observer(engine, slots);
  const sums = new Sums(engine, slots, totals);
  const jacobians = systemJacobian({ engine, slots, dimension, coupled, totals, sums }, observed);
  const { instant, mechanical } = observed;

  const resisting = (): number =>
    instant.bearingTorque + instant.pistonTorque + instant.gearTorque + instant.loadTorque;

  const timeSlopes = (direction: Direction, y: Float64Array, slopes: Float64Array): void => {
    observed.look(y);
    const speed = y[SLOT.speed]!;
    for (let i = 0; i < dimension; i += 1) slopes[i] = 0;
    slopes[SLOT.time] = 1;
    sums.flows(instant.massFlow, instant.enthalpyFlow, 1, slopes);
    sums.ends(instant, 1, speed, slopes);
    if (direction === 0) return;
    const driving = instant.gasTorque + instant.inertiaTorque + instant.gravityTorque;
    slopes[SLOT.crankAngle] = speed;
    slopes[SLOT.speed] = (driving - direction * resisting()) / instant.momentOfInertia;
    sums.works(instant, direction * speed, speed, slopes);
  };

  const angleSlopes = (y: Float64Array, slopes: Float64Array): void => {
    const perRadian = 1 / observed.lookTurning(y);
    for (let i = 0; i < dimension; i += 1) slopes[i] = 0;
    slopes[SLOT.crankAngle] = 1;
    slopes[SLOT.time] = perRadian;
    slopes[SLOT.speed] = instant.gasTorque + instant.gravityTorque - resisting();
    sums.flows(instant.massFlow, instant.enthalpyFlow, perRadian, slopes);
    sums.ends(instant, perRadian, 1, slopes);
    sums.works(instant, 1, 1, slopes);
  };

  return {
    engine,
    slots,
    dimension,
    coupled,
    timeSlopes,
    angleSlopes,
    timeJacobian(direction, y, slopes, jacobian) {
      const evaluate = (state: Float64Array, out: Float64Array): void => {
        timeSlopes(direction, state, out);
      };
      jacobians.differenceColumn(0, evaluate, y, slopes, jacobian);
      jacobians.differenceColumn(1, evaluate, y, slopes, jacobian);
      observed.look(y);
      const speed = y[SLOT.speed]!;
      const perTorque = direction === 0 ? 0 : 1 / instant.momentOfInertia;
      jacobians.gasColumns(y, slopes, { speed, time: 1, angle: speed, direction, perTorque }, jacobian);
    },
    angleJacobian(y, slopes, jacobian) {
      jacobians.differenceColumn(0, angleSlopes, y, slopes, jacobian);
      const speed = observed.lookTurning(y);
      jacobians.energyColumn(y, speed, jacobian);
      const rates = { speed, time: 1 / speed, angle: 1, direction: 1, perTorque: 1 } as const;
      jacobians.gasColumns(y, slopes, rates, jacobian);
    },
    observe(y) {
      observed.look(y);
      return instant;
    },
    momentOfInertia(angle) {
      mechanical.setPosition(angle);
      return instant.momentOfInertia;
    },
  };
}
