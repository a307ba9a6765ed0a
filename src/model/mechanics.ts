/**
 * Pistons, crank and everything that resists them, for all cylinders on the shaft: fills the mechanical half of an
 * instant, and the volume of each cylinder end, from crank angle and speed.
 */
import { writeSineCosine } from '../numerics/sine-cosine.ts';
import { bearingTorque, glandFriction, pistonFriction } from '../parts/friction.ts';
import { endVolume } from '../parts/cylinder.ts';
import { pistonTravel, pistonTravelCurvature, pistonTravelRate } from '../parts/crank-train.ts';
import type { ValveGear } from '../parts/valve-gears/valve-gear.ts';
import { ATMOSPHERE, type Engine } from './engine.ts';
import type { Instant } from './instant.ts';

const GRAVITY = 9.80665;

/** +1 when going outwards is going down. */
const outwardIsDown = { horizontal: 0, upright: 1, inverted: -1 } as const;

/** A class, so that code compiled for one engine serves for the next. */
export class Mechanics {
  private readonly engine: Engine;
  private readonly instant: Instant;
  private readonly offsets: Float64Array;
  private readonly endsPerCylinder: number;
  /** One gear drags per cylinder, whatever number of ends it serves: the cover end's. */
  private readonly gears: readonly ValveGear[];
  /** By cylinder: dx/dθ [m], and sine and cosine of its own angle. */
  private readonly levers: Float64Array;
  private readonly sines: Float64Array;
  private readonly cosines: Float64Array;
  /** What presses on the gear of one cylinder, overwritten from one to the next [Pa]. */
  private readonly gearPressures = { chest: 0, cylinder: 0, otherEnd: 0 };

  constructor(engine: Engine, instant: Instant) {
    const { cylinder, ends } = engine;
    const coverEnds = ends.filter(({ side }) => side === 'cover');
    const count = cylinder.cylinders;
    this.engine = engine;
    this.instant = instant;
    this.offsets = Float64Array.from(coverEnds, ({ deadCentre }) => deadCentre);
    this.endsPerCylinder = ends.length / count;
    this.gears = coverEnds.map((end) => end.valveGear);
    this.levers = new Float64Array(count);
    this.sines = new Float64Array(count);
    this.cosines = new Float64Array(count);
  }

  /** What goes with the crank angle [rad] alone: volumes of all ends, their rates, and the moment of inertia. */
  setPosition(angle: number): void {
    const { engine, instant, offsets, endsPerCylinder, levers, sines, cosines } = this;
    const { crank, ends } = engine;
    const { endVolume: volumes, volumeRate } = instant;
    const mass = engine.cylinder.reciprocating_mass;
    let moment = engine.flywheel.momentOfInertia;
    for (let k = 0; k < offsets.length; k += 1) {
      writeSineCosine(angle - offsets[k]!, sines, cosines, k);
      const travel = pistonTravel(crank, sines[k]!, cosines[k]!);
      const lever = pistonTravelRate(crank, sines[k]!, cosines[k]!);
      levers[k] = lever;
      moment += mass * lever * lever;
      for (let i = k * endsPerCylinder; i < (k + 1) * endsPerCylinder; i += 1) {
        const end = ends[i]!;
        volumes[i] = endVolume(end, travel);
        volumeRate[i] = end.side === 'cover' ? end.area * lever : -end.area * lever;
      }
    }
    instant.momentOfInertia = moment;
  }

  /** Torques at the position last set; pressures must be set. */
  setTorques(angle: number, speed: number): void {
    const { engine, instant, offsets, endsPerCylinder, gears, levers, sines, cosines } = this;
    const { gearPressures } = this;
    const { crank, ends, friction } = engine;
    const { pressure, volumeRate } = instant;
    const { reciprocating_mass: mass, attitude } = engine.cylinder;
    const weight = mass * GRAVITY * outwardIsDown[attitude];
    const room = pressure[ATMOSPHERE]!;
    const quickness = Math.abs(speed);
    let gas = 0;
    let inertia = 0;
    let gravity = 0;
    let piston = 0;
    let gear = 0;
    gearPressures.chest = pressure[engine.chest]!;
    for (let i = 0; i < ends.length; i += 1) gas += (pressure[ends[i]!.place]! - room) * volumeRate[i]!;
    for (let k = 0; k < offsets.length; k += 1) {
      const lever = levers[k]!;
      const cover = pressure[ends[k * endsPerCylinder]!.place]!;
      const behind = endsPerCylinder === 2 ? pressure[ends[k * 2 + 1]!.place]! : room;
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
    instant.loadTorque = engine.load.torque(quickness);
  }
}
