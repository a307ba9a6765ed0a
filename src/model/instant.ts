/** What the engine feels at one instant. One object per system, overwritten by each look. */
import * as header from '../kernel/header.ts';
import { doubles, integers } from '../numerics/kernel.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';

export interface Instant {
  /** By place. */
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** By passage: mass [kg/s] and enthalpy [W], positive from → to. */
  readonly massFlow: Float64Array;
  readonly enthalpyFlow: Float64Array;
  /** By cylinder end: volume [m³], dV/dθ [m³/rad], heat from its wall [W]. */
  readonly endVolume: Float64Array;
  readonly volumeRate: Float64Array;
  readonly wallHeat: Float64Array;
  /** Torques at the crank [N m]: of the gas, of moving masses, of gravity; then what resists. */
  gasTorque: number;
  inertiaTorque: number;
  gravityTorque: number;
  bearingTorque: number;
  pistonTorque: number;
  gearTorque: number;
  loadTorque: number;
  /** Of flywheel and pistons about the crank, at this angle [kg m²]. */
  momentOfInertia: number;
}

/** Reads it out of the kernel, where the numbers of the engine begin at the word `base`. */
export class InstantReader {
  private readonly instant: Instant;

  constructor({ volumes, passages, ends }: Engine) {
    const places = FIRST_VOLUME + volumes.length;
    this.instant = {
      pressure: new Float64Array(places),
      temperature: new Float64Array(places),
      massFlow: new Float64Array(passages.length),
      enthalpyFlow: new Float64Array(passages.length),
      endVolume: new Float64Array(ends.length),
      volumeRate: new Float64Array(ends.length),
      wallHeat: new Float64Array(ends.length),
      gasTorque: 0,
      inertiaTorque: 0,
      gravityTorque: 0,
      bearingTorque: 0,
      pistonTorque: 0,
      gearTorque: 0,
      loadTorque: 0,
      momentOfInertia: 0,
    };
  }

  read(base: number): Readonly<Instant> {
    const { instant } = this;
    const felt = arrayAt(base, header.INSTANT);
    copy(base, header.PRESSURE, instant.pressure);
    copy(base, header.TEMPERATURE, instant.temperature);
    copy(base, header.MASS_FLOW, instant.massFlow);
    copy(base, header.ENTHALPY_FLOW, instant.enthalpyFlow);
    copy(base, header.END_VOLUME, instant.endVolume);
    copy(base, header.VOLUME_RATE, instant.volumeRate);
    copy(base, header.WALL_HEAT, instant.wallHeat);
    instant.gasTorque = doubles[felt + header.GAS_TORQUE]!;
    instant.inertiaTorque = doubles[felt + header.INERTIA_TORQUE]!;
    instant.gravityTorque = doubles[felt + header.GRAVITY_TORQUE]!;
    instant.bearingTorque = doubles[felt + header.BEARING_TORQUE]!;
    instant.pistonTorque = doubles[felt + header.PISTON_TORQUE]!;
    instant.gearTorque = doubles[felt + header.GEAR_TORQUE]!;
    instant.loadTorque = doubles[felt + header.LOAD_TORQUE]!;
    instant.momentOfInertia = doubles[felt + header.MOMENT_OF_INERTIA]!;
    return instant;
  }

  momentOfInertia(base: number): number {
    return doubles[arrayAt(base, header.INSTANT) + header.MOMENT_OF_INERTIA]!;
  }

  /** The volumes of all cylinder ends together [m³]. */
  pushedVolume(base: number): number {
    const volumes = arrayAt(base, header.END_VOLUME);
    let sum = 0;
    for (let i = 0; i < this.instant.endVolume.length; i += 1) sum += doubles[volumes + i]!;
    return sum;
  }
}

const arrayAt = (base: number, name: number): number => base + integers[2 * (base + name)]!;

function copy(base: number, name: number, out: Float64Array): void {
  const from = arrayAt(base, name);
  for (let i = 0; i < out.length; i += 1) out[i] = doubles[from + i]!;
}
