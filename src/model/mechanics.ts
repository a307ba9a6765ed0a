/**
 * Pistons, crank and everything that resists them, for all cylinders on the shaft: fills the mechanical half of an
 * instant, and the volume of each cylinder end, from crank angle and speed.
 */
import { writeSineCosine } from '../numerics/sine-cosine.ts';
import { bearingTorque, glandFriction, pistonFriction } from '../parts/friction.ts';
import { crankOffset, endVolume } from '../parts/cylinder.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import { pistonTravel, pistonTravelCurvature, pistonTravelRate } from '../parts/crank-train.ts';
import { ATMOSPHERE, type Engine } from './engine.ts';
import type { Instant } from './instant.ts';

const GRAVITY = 9.80665;

/** +1 when going outwards is going down. */
const outwardIsDown = { horizontal: 0, upright: 1, inverted: -1 } as const;

export interface Mechanics {
  /** What goes with the crank angle [rad] alone: volumes of all ends, their rates, and the moment of inertia. */
  setPosition(angle: number): void;
  /** Torques at the position last set; pressures must be set. */
  setTorques(angle: number, speed: number): void;
}

export function mechanics(engine: Engine, instant: Instant): Mechanics {
  const { cylinder, crank, friction, ends, valveGears } = flattened(engine);
  const offsets = Float64Array.from({ length: cylinder.cylinders }, (_, i) => crankOffset(cylinder, i));
  const endsPerCylinder = cylinder.action === 'double' ? 2 : 1;
  const mass = cylinder.reciprocating_mass;
  const weight = mass * GRAVITY * outwardIsDown[cylinder.attitude];
  const { pressure, endVolume: volumes, volumeRate } = instant;
  /** By cylinder: dx/dθ [m], and sine and cosine of its own angle. */
  const levers = new Float64Array(offsets.length);
  const sines = new Float64Array(offsets.length);
  const cosines = new Float64Array(offsets.length);

  return {
    setPosition(angle) {
      const wrapped = wrappedAngle(angle);
      let moment = engine.flywheel.momentOfInertia;
      for (let k = 0; k < offsets.length; k += 1) {
        writeSineCosine(wrapped - offsets[k]!, sines, cosines, k);
        const sin = sines[k]!;
        const cos = cosines[k]!;
        const travel = pistonTravel(crank, sin, cos);
        const lever = pistonTravelRate(crank, sin, cos);
        levers[k] = lever;
        moment += mass * lever * lever;
        for (let i = k * endsPerCylinder; i < (k + 1) * endsPerCylinder; i += 1) {
          const end = ends[i]!;
          volumes[i] = endVolume(end, travel);
          volumeRate[i] = end.side === 'cover' ? end.area * lever : -end.area * lever;
        }
      }
      instant.momentOfInertia = moment;
    },
    setTorques(angle, speed) {
      const room = pressure[ATMOSPHERE]!;
      const quickness = Math.abs(speed);
      let gas = 0;
      let inertia = 0;
      let gravity = 0;
      let piston = 0;
      let gear = 0;
      for (let i = 0; i < ends.length; i += 1) gas += (pressure[ends[i]!.place]! - room) * volumeRate[i]!;
      for (let k = 0; k < offsets.length; k += 1) {
        const lever = levers[k]!;
        const cover = pressure[ends[k * endsPerCylinder]!.place]!;
        const behind = endsPerCylinder === 2 ? pressure[ends[k * 2 + 1]!.place]! : room;
        let force = pistonFriction(friction, cover - behind);
        if (endsPerCylinder === 2) force += glandFriction(friction, behind - room);
        piston += force * Math.abs(lever);
        gravity += weight * lever;
        gear += valveGears[k]!.dragTorque(angle - offsets[k]!, quickness);
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
