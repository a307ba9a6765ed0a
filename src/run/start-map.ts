/**
 * From where the engine starts: for rest positions all around the turn, whether it gets going when the air is turned on,
 * and if not, the slowest push of the flywheel by hand that catches.
 *
 * Unaided means as in a run: the crank is free while the air comes on. For a push the air is on and has filled what it can
 * fill with the crank held; then the flywheel is let go at a speed. Either has caught when a turn ends faster than it
 * began, or near the settled speed; and failed when the crank comes to rest, creeps, or turns back for good.
 */
import type { Engine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { SLOT } from '../model/slots.ts';
import { engineSystem, type EngineSystem } from '../model/system.ts';
import type { StartMap, StartPosition, TorqueCurve } from './drive-result.ts';
import { motionFrom, nextMilestone } from './motion.ts';
import { secondsBetween } from './operating-points.ts';
import { engineStepper, ROUGH, type Stepper } from './stepper.ts';

/** Time that a held crank gives the air to come on [s]. */
const FILLING = 3;

/** A start has been decided after so long [s], and so many turns. */
const LONGEST = 30;
const MOST_TURNS = 12;

/** Share of the settled speed that counts as near it; the settled speed itself is the fastest push looked for. */
const CAUGHT = 0.8;

/** How closely the slowest push is found [rad/s]. */
const CLOSENESS = 0.1;

interface Going {
  readonly engine: Engine;
  /** [rad/s]; undefined when the engine has none: nothing can be started then. */
  readonly settledSpeed: number | undefined;
  readonly curve: TorqueCurve;
}

interface Start {
  /** Speed [rad/s] and time [s] when it was seen to have caught. */
  readonly speed: number;
  readonly time: number;
}

export function startMap(going: Going, count = 72): StartMap {
  const angles = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
  const { settledSpeed } = going;
  const positions =
    settledSpeed === undefined
      ? angles.map((crankAngle) => ({ crankAngle, startsUnaided: false }))
      : angles.map(startFinder({ ...going, settledSpeed }));
  const unaided = positions.filter(({ startsUnaided }) => startsUnaided).length;
  return { positions, unaidedShare: unaided / count };
}

/**
 * Share of the rest positions from which an engine that settles at a speed [rad/s] gets going by itself: the start map
 * without its pushes, which cost most of it.
 */
export function unaidedShare(engine: Engine, settledSpeed: number, count = 72): number {
  const system = engineSystem(engine, { totals: false });
  const start = startFollower(system, engineStepper(system, ROUGH), settledSpeed);
  const angles = Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
  return angles.filter((angle) => start(initialState(system, angle, 0)) !== undefined).length / count;
}

/** Follows a start until it is decided; undefined when it fails. */
const startFollower =
  (system: EngineSystem, stepper: Stepper, settledSpeed: number) =>
  (y: Float64Array): Start | undefined => {
    const began = y[SLOT.time]!;
    const motion = motionFrom({ system, stepper, y, longestTime: began + LONGEST });
    let last = Infinity;
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      const { kind } = nextMilestone(motion);
      if (kind !== 'turn') return undefined;
      const speed = y[SLOT.speed]!;
      if (speed > last || speed > CAUGHT * settledSpeed) return { speed, time: y[SLOT.time]! - began };
      last = speed;
    }
    return undefined;
  };

/** Tries one position after the other. */
function startFinder({
  engine,
  settledSpeed,
  curve,
}: Going & { readonly settledSpeed: number }): (crankAngle: number) => StartPosition {
  const system = engineSystem(engine, { totals: false });
  const stepper = engineStepper(system, ROUGH);
  const start = startFollower(system, stepper, settledSpeed);

  /** What stands in the engine when the air has been on for a while and the crank is held. */
  const filled = (angle: number): Float64Array => {
    const y = initialState(system, angle, 0);
    stepper.inTime(0, y, FILLING, { stepLimit: 10_000 });
    return y;
  };

  const pushed = (held: Float64Array, speed: number): Start | undefined => {
    const y = held.slice();
    y[SLOT.speed] = speed;
    return start(y);
  };

  const secondsToSpeed = ({ speed, time }: Start): number => {
    const wanted = 0.9 * settledSpeed;
    const { momentOfInertia } = engine.flywheel;
    return speed >= wanted ? time : time + secondsBetween(curve, engine.load, momentOfInertia, speed, wanted);
  };

  return (crankAngle) => {
    const unaided = start(initialState(system, crankAngle, 0));
    if (unaided) return { crankAngle, startsUnaided: true, push: 0, secondsToSpeed: secondsToSpeed(unaided) };
    const held = filled(crankAngle);
    let enough = settledSpeed;
    let going = pushed(held, enough);
    if (!going) return { crankAngle, startsUnaided: false };
    let tooSlow = 0;
    while (enough - tooSlow > Math.max(CLOSENESS, 0.02 * enough)) {
      const middle = (enough + tooSlow) / 2;
      const tried = pushed(held, middle);
      if (tried) [enough, going] = [middle, tried];
      else tooSlow = middle;
    }
    return { crankAngle, startsUnaided: false, push: enough, secondsToSpeed: secondsToSpeed(going) };
  };
}
