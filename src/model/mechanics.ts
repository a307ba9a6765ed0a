/**
 * Pistons, crank and everything that resists them, for all cylinders on the shaft: fills the mechanical half of an
 * instant, and the volume of each cylinder end, from crank angle and speed.
 */
import { bearingTorque, glandFriction, pistonFriction } from '../parts/friction.ts';
import { endVolume } from '../parts/cylinder.ts';
import { pistonTravel, pistonTravelCurvature, pistonTravelRate } from '../parts/crank-train.ts';
import { ATMOSPHERE, type Engine } from './engine.ts';
import type { Instant } from './instant.ts';

const GRAVITY = 9.80665;

/** +1 when going outwards is going down. */
const outwardIsDown = { horizontal: 0, upright: 1, inverted: -1 } as const;

export interface Mechanics {
  /** Volumes of all ends, and their rates, at a crank angle [rad]. */
  setVolumes(angle: number): void;
  /** Torques and inertia; volumes and pressures must be set. */
  setTorques(angle: number, speed: number): void;
}

export function mechanics(engine: Engine, instant: Instant): Mechanics {
  const { cylinder, crank, friction, ends, valveGears } = flattened(engine);
  const coverEnds = ends.filter(({ side }) => side === 'cover');
  const offsets = Float64Array.from(coverEnds, ({ deadCentre }) => deadCentre);
  const gearPressures = { chest: 0, cylinder: 0, otherEnd: 0 };
  const endsPerCylinder = cylinder.action === 'double' ? 2 : 1;
  const mass = cylinder.reciprocating_mass;
  const weight = mass * GRAVITY * outwardIsDown[cylinder.attitude];
  const { pressure, endVolume: volumes, volumeRate } = instant;

  return {
    setVolumes(angle) {
      for (let i = 0; i < ends.length; i += 1) {
        const end = ends[i]!;
        const own = angle - offsets[end.cylinder]!;
        const sin = Math.sin(own);
        const cos = Math.cos(own);
        volumes[i] = endVolume(end, pistonTravel(crank, sin, cos));
        const rate = end.area * pistonTravelRate(crank, sin, cos);
        volumeRate[i] = end.side === 'cover' ? rate : -rate;
      }
    },
    setTorques(angle, speed) {
      const room = pressure[ATMOSPHERE]!;
      const quickness = Math.abs(speed);
      let gas = 0;
      let inertia = 0;
      let gravity = 0;
      let piston = 0;
      let gear = 0;
      let moment = engine.flywheel.momentOfInertia;
      gearPressures.chest = pressure[engine.chest]!;
      for (let i = 0; i < ends.length; i += 1) gas += (pressure[ends[i]!.place]! - room) * volumeRate[i]!;
      for (let k = 0; k < offsets.length; k += 1) {
        const own = angle - offsets[k]!;
        const sin = Math.sin(own);
        const cos = Math.cos(own);
        const lever = pistonTravelRate(crank, sin, cos);
        const cover = pressure[ends[k * endsPerCylinder]!.place]!;
        const behind = endsPerCylinder === 2 ? pressure[ends[k * 2 + 1]!.place]! : room;
        let force = pistonFriction(friction, cover - behind);
        if (endsPerCylinder === 2) force += glandFriction(friction, behind - room);
        piston += force * Math.abs(lever);
        gravity += weight * lever;
        gearPressures.cylinder = cover;
        gearPressures.otherEnd = behind;
        gear += valveGears[k]!.dragTorque(own, quickness, gearPressures);
        if (mass === 0) continue;
        moment += mass * lever * lever;
        inertia -= mass * lever * pistonTravelCurvature(crank, sin, cos) * speed * speed;
      }
      instant.gasTorque = gas;
      instant.inertiaTorque = inertia;
      instant.gravityTorque = gravity;
      instant.pistonTorque = piston;
      instant.gearTorque = gear;
      instant.momentOfInertia = moment;
      instant.bearingTorque = bearingTorque(friction, quickness);
      instant.loadTorque = engine.load.torque(quickness);
    },
  };
}

/** One gear drags per cylinder, whatever number of ends it serves: the cover end's. */
function flattened(engine: Engine) {
  return {
    ...engine,
    valveGears: engine.ends.filter(({ side }) => side === 'cover').map((end) => end.valveGear),
  };
}
