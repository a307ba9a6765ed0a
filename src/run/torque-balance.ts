/** An engine at rest: what pushes it, and what holds it. */
import type { EngineSystem } from '../model/system.ts';

export interface TorqueBalance {
  /** Torque of the air, and of the pistons' weight, at the crank [N m], positive forward. */
  readonly applied: number;
  /** Torque that must be exceeded to move it either way: break-away friction, valve gear and load. */
  readonly holding: number;
}

/** The balance of a state as if its crank stood still. */
export function torqueBalance(system: EngineSystem, y: Float64Array): TorqueBalance {
  const now = system.observeAtRest(y);
  return {
    applied: now.gasTorque + now.gravityTorque,
    holding: now.bearingTorque + now.pistonTorque + now.gearTorque + now.loadTorque,
  };
}
