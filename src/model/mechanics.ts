/**
 * Pistons, crank and everything that resists them, for all cylinders on the shaft: fills the mechanical half of an
 * instant, and the volume of each cylinder end, from crank angle and speed.
 */
import { writeSineCosine } from '../numerics/sine-cosine.ts';
import { bearingTorque, glandFriction, pistonFriction, type Friction } from '../parts/friction.ts';
import { endVolume } from '../parts/cylinder.ts';
import {
  pistonTravel,
  pistonTravelCurvature,
  pistonTravelRate,
  type CrankTrain,
} from '../parts/crank-train.ts';
import type { Load } from '../parts/loads/load.ts';
import type { ValveGear } from '../parts/valve-gears/valve-gear.ts';
import { ATMOSPHERE, FIRST_VOLUME, type Engine } from './engine.ts';
import type { Instant } from './instant.ts';

const GRAVITY = 9.80665;

/** +1 when going outwards is going down. */
const outwardIsDown = { horizontal: 0, upright: 1, inverted: -1 } as const;

/** Copies that are alike in every engine, however its description came about: the laws are compiled once for all. */
function copyOfCrank({ crankRadius, rodLength, oscillating }: CrankTrain): CrankTrain {
  if (oscillating === undefined) return { crankRadius, rodLength };
  const { crankRadius: radius, trunnionDistance } = oscillating;
  return { crankRadius, rodLength, oscillating: { crankRadius: radius, trunnionDistance } };
}

const copyOfFriction = (law: Friction): Friction => ({
  running_torque: law.running_torque,
  breakaway_torque: law.breakaway_torque,
  stribeck_speed: law.stribeck_speed,
  viscous_torque: law.viscous_torque,
  piston_force: law.piston_force,
  piston_force_per_pressure: law.piston_force_per_pressure,
  gland_force: law.gland_force,
  gland_force_per_pressure: law.gland_force_per_pressure,
});

/** A class, so that code compiled for one engine serves for the next. */
export class Mechanics {
  private readonly instant: Instant;
  private readonly crank: CrankTrain;
  private readonly friction: Friction;
  private readonly load: Load;
  private readonly flywheelMoment: number;
  /** Reciprocating mass [kg], and its weight outwards [N]. */
  private readonly mass: number;
  private readonly weight: number;
  private readonly chest: number;
  private readonly firstEnd: number;
  private readonly offsets: Float64Array;
  private readonly endsPerCylinder: number;
  /** By end: volume [m³] at top dead centre, and what the piston's travel adds to it [m²]. */
  private readonly deadVolume: Float64Array;
  private readonly opening: Float64Array;
  /** One gear drags per cylinder, whatever number of ends it serves: the cover end's. */
  private readonly gears: readonly ValveGear[];
  /** By cylinder: dx/dθ [m], and sine and cosine of its own angle. */
  private readonly levers: Float64Array;
  private readonly sines: Float64Array;
  private readonly cosines: Float64Array;
  /** What presses on the gear of one cylinder, overwritten from one to the next [Pa]. */
  private readonly gearPressures = { chest: 0, cylinder: 0, otherEnd: 0 };
  /** The position that is set. */
  private angle = NaN;

  constructor(engine: Engine, instant: Instant) {
    const { cylinder, ends, volumes } = engine;
    const coverEnds = ends.filter(({ side }) => side === 'cover');
    const count = cylinder.cylinders;
    this.instant = instant;
    this.crank = copyOfCrank(engine.crank);
    this.friction = copyOfFriction(engine.friction);
    this.load = engine.load;
    this.flywheelMoment = engine.flywheel.momentOfInertia;
    this.mass = cylinder.reciprocating_mass;
    this.weight = this.mass * GRAVITY * outwardIsDown[cylinder.attitude];
    this.chest = engine.chest;
    this.firstEnd = FIRST_VOLUME + volumes.length - ends.length;
    this.offsets = Float64Array.from(coverEnds, ({ deadCentre }) => deadCentre);
    this.endsPerCylinder = ends.length / count;
    this.deadVolume = Float64Array.from(ends, (end) => endVolume(end, 0));
    this.opening = Float64Array.from(ends, ({ side, area }) => (side === 'cover' ? area : -area));
    this.gears = coverEnds.map((end) => end.valveGear);
    this.levers = new Float64Array(count);
    this.sines = new Float64Array(count);
    this.cosines = new Float64Array(count);
  }

  /** What goes with the crank angle [rad] alone: volumes of all ends, their rates, and the moment of inertia. */
  setPosition(angle: number): void {
    if (angle === this.angle) return;
    this.angle = angle;
    const { crank, mass, instant, offsets, endsPerCylinder, levers, sines, cosines } = this;
    const { deadVolume, opening } = this;
    const { endVolume: volumes, volumeRate } = instant;
    let moment = this.flywheelMoment;
    for (let k = 0; k < offsets.length; k += 1) {
      writeSineCosine(angle - offsets[k]!, sines, cosines, k);
      const travel = pistonTravel(crank, sines[k]!, cosines[k]!);
      const lever = pistonTravelRate(crank, sines[k]!, cosines[k]!);
      levers[k] = lever;
      moment += mass * lever * lever;
      for (let i = k * endsPerCylinder; i < (k + 1) * endsPerCylinder; i += 1) {
        volumes[i] = deadVolume[i]! + opening[i]! * travel;
        volumeRate[i] = opening[i]! * lever;
      }
    }
    instant.momentOfInertia = moment;
  }

  /** Torques at the position last set; pressures must be set. */
  setTorques(angle: number, speed: number): void {
    const { instant, offsets, endsPerCylinder, gears, levers, sines, cosines } = this;
    const { crank, friction, mass, weight, firstEnd, gearPressures } = this;
    const { pressure, volumeRate } = instant;
    const room = pressure[ATMOSPHERE]!;
    const quickness = Math.abs(speed);
    let gas = 0;
    let inertia = 0;
    let gravity = 0;
    let piston = 0;
    let gear = 0;
    gearPressures.chest = pressure[this.chest]!;
    for (let i = 0; i < volumeRate.length; i += 1) gas += (pressure[firstEnd + i]! - room) * volumeRate[i]!;
    for (let k = 0; k < offsets.length; k += 1) {
      const lever = levers[k]!;
      const cover = pressure[firstEnd + k * endsPerCylinder]!;
      const behind = endsPerCylinder === 2 ? pressure[firstEnd + k * 2 + 1]! : room;
      let force = pistonFriction(friction, cover - behind);
      if (endsPerCylinder === 2) force += glandFriction(friction, behind - room);
      piston += force * Math.abs(lever);
      gravity += weight * lever;
      gearPressures.cylinder = cover;
      gearPressures.otherEnd = behind;
      gear += gears[k]!.dragTorque(angle - offsets[k]!, quickness, gearPressures);
      if (mass === 0) continue;
      inertia -= mass * lever * pistonTravelCurvature(crank, sines[k]!, cosines[k]!) * speed * speed;
    }
    instant.gasTorque = gas;
    instant.inertiaTorque = inertia;
    instant.gravityTorque = gravity;
    instant.pistonTorque = piston;
    instant.gearTorque = gear;
    instant.bearingTorque = bearingTorque(friction, quickness);
    instant.loadTorque = this.load.torque(quickness);
  }
}
