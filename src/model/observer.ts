/**
 * From a state to the instant it stands for: pressures and temperatures first, then torques, then each passage's flow once.
 *
 *   p = (γ−1) U/V,  T = U/(m cv)
 */
import { wallArea } from '../parts/cylinder.ts';
import type { WallHeat } from '../parts/wall-heat/wall-heat.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';
import { Flows } from './flows.ts';
import { emptyInstant, type Instant } from './instant.ts';
import { Mechanics } from './mechanics.ts';
import { SLOT, type Slots } from './slots.ts';

/**
 * Trial states of an integrator may leave the physical range; the laws are then evaluated at its border [kg/m³, K, rad/s].
 * A run whose accepted state is out there ends.
 */
const LEAST_DENSITY = 1e-4;
const LEAST_TEMPERATURE = 20;
const MOST_TEMPERATURE = 3000;
const LEAST_SPEED = 1e-3;

/** A class, so that code compiled for one engine serves for the next. */
export class Observer {
  /** Overwritten by each look. */
  readonly instant: Instant;
  readonly mechanical: Mechanics;
  readonly flows: Flows;
  private readonly wall: WallHeat;
  /** By end: wall [m²] of cover and piston, and by how much the barrel adds to it per volume [1/m]. */
  private readonly coverArea: Float64Array;
  private readonly barrelPerVolume: Float64Array;
  private readonly specificGasConstant: number;
  private readonly heatCapacity: number;
  private readonly fixedVolume: Float64Array;
  private readonly firstEnd: number;
  private readonly firstMass: number;

  constructor(engine: Engine, slots: Slots) {
    const { volumes, ends, cylinder, gas } = engine;
    this.wall = engine.wallHeat;
    this.coverArea = Float64Array.from(ends, (end) => wallArea(end, cylinder.bore, 0));
    this.barrelPerVolume = Float64Array.from(
      ends,
      (end, i) => wallArea(end, cylinder.bore, 1) - this.coverArea[i]!,
    );
    this.specificGasConstant = gas.specificGasConstant;
    this.heatCapacity = gas.heatCapacityAtConstantVolume;
    this.instant = emptyInstant(engine);
    this.mechanical = new Mechanics(engine, this.instant);
    this.flows = new Flows(engine, this.instant);
    this.fixedVolume = Float64Array.from(volumes, (volume) => volume.fixedVolume ?? 0);
    this.firstEnd = volumes.length - ends.length;
    this.firstMass = slots.mass(0);
  }

  /** Volume [m³] and mass [kg] that the laws were given, of a volume by its number. */
  volume(i: number): number {
    return i < this.firstEnd ? this.fixedVolume[i]! : this.instant.endVolume[i - this.firstEnd]!;
  }

  mass(y: Float64Array, i: number): number {
    return Math.max(y[this.firstMass + 2 * i]!, LEAST_DENSITY * this.volume(i));
  }

  /** Heat [W] from the wall of a cylinder end, by its number, at a temperature and a pressure. */
  wallHeat(i: number, t: number, p: number, speed: number): number {
    const area = this.coverArea[i]! + this.barrelPerVolume[i]! * this.instant.endVolume[i]!;
    return this.wall.flow(area, t, p, Math.abs(speed));
  }

  /** Looks at a state that holds the speed. */
  look(y: Float64Array): void {
    const angle = y[SLOT.crankAngle]!;
    this.mechanical.setPosition(angle);
    this.feel(angle, y, y[SLOT.speed]!);
  }

  /** Looks at pressures and torques alone, of a state as if its crank stood still; all flows stay as they were. */
  lookAtRest(y: Float64Array): void {
    const angle = y[SLOT.crankAngle]!;
    this.mechanical.setPosition(angle);
    this.setGas(y);
    this.mechanical.setTorques(angle, 0);
  }

  /** Looks at a state that holds the kinetic energy of an engine that turns forward; its speed [rad/s]. */
  lookTurning(angle: number, y: Float64Array): number {
    this.mechanical.setPosition(angle);
    const square = (2 * y[SLOT.speed]!) / this.instant.momentOfInertia;
    const speed = square > LEAST_SPEED * LEAST_SPEED ? Math.sqrt(square) : LEAST_SPEED;
    this.feel(angle, y, speed);
    return speed;
  }

  /** Whether the air of any passage comes from elsewhere than the donors kept, at a state of either kind. */
  areDonorsStale(angle: number, y: Float64Array): boolean {
    this.mechanical.setPosition(angle);
    this.setGas(y);
    return this.flows.areDonorsStale;
  }

  /** All but the position, which must be set. */
  private feel(angle: number, y: Float64Array, speed: number): void {
    const { mechanical, flows, firstEnd } = this;
    const { wallHeat, temperature, pressure } = this.instant;
    this.setGas(y);
    mechanical.setTorques(angle, speed);
    flows.setOpenings(angle, Math.abs(speed));
    flows.setFlows();
    for (let i = 0; i < wallHeat.length; i += 1) {
      const place = FIRST_VOLUME + firstEnd + i;
      wallHeat[i] = this.wallHeat(i, temperature[place]!, pressure[place]!, speed);
    }
  }

  private setGas(y: Float64Array): void {
    const { fixedVolume, firstEnd, firstMass, specificGasConstant, heatCapacity: cv } = this;
    const { pressure, temperature, endVolume } = this.instant;
    for (let i = 0; i < fixedVolume.length; i += 1) {
      const v = i < firstEnd ? fixedVolume[i]! : endVolume[i - firstEnd]!;
      const m = Math.max(y[firstMass + 2 * i]!, LEAST_DENSITY * v);
      const t = y[firstMass + 2 * i + 1]! / (m * cv);
      const bounded = Math.min(MOST_TEMPERATURE, Math.max(LEAST_TEMPERATURE, t));
      temperature[FIRST_VOLUME + i] = bounded;
      pressure[FIRST_VOLUME + i] = (specificGasConstant * m * bounded) / v;
    }
  }
}
