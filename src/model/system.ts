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
 *
 * All of it is reckoned by the kernel, src/kernel; this is its face.
 */
import { DIMENSION, TOTALS } from '../kernel/header.ts';
import type { StepChoices } from '../numerics/integrator.ts';
import { doubles, kernel, Seat, takeEngineSeat } from '../numerics/kernel.ts';
import { engineImage, type EngineImage } from './engine-image.ts';
import { LawsOfEngine } from './engine-laws.ts';
import type { Engine } from './engine.ts';
import { InstantReader, type Instant } from './instant.ts';
import { SLOT, slotsFor, type Slots } from './slots.ts';

export type Direction = -1 | 0 | 1;

export interface EngineSystem {
  readonly engine: Engine;
  readonly slots: Slots;
  readonly dimension: number;
  /** The unknowns on which slopes depend, in the order of the columns of a Jacobian: against time, and against the angle. */
  readonly coupledInTime: readonly number[];
  readonly coupledInAngle: readonly number[];
  /** Takes the seat of this engine in the kernel; for a method that steps there. Without it, steps ask for slopes here. */
  readonly sit?: (() => unknown) | undefined;
  /** Slopes per second of a state that holds the speed. */
  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void;
  /** Slopes per radian, at a crank angle, of a state that holds the kinetic energy. */
  angleSlopes(angle: number, y: Float64Array, slopes: Float64Array): void;
  /** Row by row ∂slope/∂unknown, at the state for which slopes were last asked for, and those. */
  timeJacobian(direction: Direction, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void;
  /** The same, with ∂slope/∂angle in `drift` if that is asked for. */
  angleJacobian(
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift?: Float64Array,
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
  readonly donors: StepChoices;
  private readonly seat: Seat;
  private readonly laws: LawsOfEngine;
  private readonly image: EngineImage;
  private readonly instant: InstantReader;
  private isKeeping = false;

  constructor(engine: Engine, totals: boolean) {
    const leaksIn = [...new Set(engine.ends.flatMap((end) => end.leaksIn))];
    const slots = slotsFor(engine.volumes.length, engine.passages.length, leaksIn);
    const gas = Array.from({ length: slots.firstTotal - slots.mass(0) }, (_, i) => slots.mass(0) + i);
    this.engine = engine;
    this.slots = slots;
    this.dimension = totals ? slots.dimension : slots.firstTotal;
    this.coupledInTime = [SLOT.crankAngle, SLOT.speed, ...gas];
    this.coupledInAngle = [SLOT.speed, ...gas];
    this.image = engineImage(engine, slots);
    this.laws = new LawsOfEngine(engine, this.image.openings);
    this.seat = new Seat(totals ? this.image.words : withoutTotals(this.image.words, slots.firstTotal));
    this.instant = new InstantReader(engine);
    this.donors = {
      keep: () => {
        this.sit();
        kernel.keepDonors();
        this.isKeeping = true;
      },
      release: () => {
        this.isKeeping = false;
        this.sit();
        kernel.releaseDonors();
      },
      restore: () => {
        this.sit();
        kernel.restoreDonors();
        this.isKeeping = true;
      },
      areStale: (angle, y) => kernel.areStale(angle, this.put(y)) !== 0,
    };
  }

  readonly sit = (): number => {
    if (this.isKeeping && this.seat.base === 0)
      throw new Error('the numbers of an engine were given up while its donors were kept');
    return takeEngineSeat(this.seat, this.laws);
  };

  timeSlopes(direction: Direction, y: Float64Array, slopes: Float64Array): void {
    const state = this.put(y);
    const out = this.seat.base + this.image.slopes;
    kernel.timeSlopes(direction, state, out);
    read(slopes, out, this.dimension);
  }

  angleSlopes(angle: number, y: Float64Array, slopes: Float64Array): void {
    const state = this.put(y);
    const out = this.seat.base + this.image.slopes;
    kernel.angleSlopes(angle, state, out);
    read(slopes, out, this.dimension);
  }

  timeJacobian(direction: Direction, y: Float64Array, slopes: Float64Array, jacobian: Float64Array): void {
    const isGone = this.seat.base === 0;
    const state = this.put(y);
    const { base } = this.seat;
    const given = base + this.image.slopes;
    const out = base + this.image.jacobian;
    // The flows must stand as they did for the slopes.
    if (isGone) kernel.timeSlopes(direction, state, given);
    doubles.set(slopes, given);
    kernel.timeJacobian(direction, state, given, out);
    read(jacobian, out, this.dimension * this.coupledInTime.length);
  }

  angleJacobian(
    angle: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift?: Float64Array,
  ): void {
    const isGone = this.seat.base === 0;
    const state = this.put(y);
    const { base } = this.seat;
    const given = base + this.image.slopes;
    const out = base + this.image.jacobian;
    const outDrift = base + this.image.drift;
    if (isGone) kernel.angleSlopes(angle, state, given);
    doubles.set(slopes, given);
    kernel.angleJacobian(angle, state, given, out);
    read(jacobian, out, this.dimension * this.coupledInAngle.length);
    if (!drift) return;
    kernel.angleDrift(angle, state, given, outDrift);
    read(drift, outDrift, this.dimension);
  }

  observe(y: Float64Array): Readonly<Instant> {
    kernel.look(this.put(y));
    return this.instant.read(this.seat.base);
  }

  observeAtRest(y: Float64Array): Readonly<Instant> {
    kernel.lookAtRest(this.put(y));
    return this.instant.read(this.seat.base);
  }

  momentOfInertia(angle: number): number {
    const base = this.sit();
    kernel.setPosition(angle);
    return this.instant.momentOfInertia(base);
  }

  pushedVolume(angle: number): number {
    const base = this.sit();
    kernel.setPosition(angle);
    return this.instant.pushedVolume(base);
  }

  /** Puts a state where the kernel can see it; the word where it begins. */
  private put(y: Float64Array): number {
    const state = this.sit() + this.image.state;
    for (let i = 0; i < this.dimension; i += 1) doubles[state + i] = y[i]!;
    return state;
  }
}

function read(out: Float64Array, from: number, length: number): void {
  for (let i = 0; i < length; i += 1) out[i] = doubles[from + i]!;
}

/** The numbers of an engine whose state ends before the totals. */
function withoutTotals(words: Float64Array, dimension: number): Float64Array {
  const copy = words.slice();
  const integers = new Int32Array(copy.buffer);
  integers[2 * TOTALS] = 0;
  integers[2 * DIMENSION] = dimension;
  return copy;
}

export function engineSystem(engine: Engine, { totals }: SystemOptions = { totals: true }): EngineSystem {
  return new System(engine, totals);
}
