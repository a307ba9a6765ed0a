/**
 * The engine held still under air at angle after angle of a turn, until its pressures stand: what pushes it there, what
 * holds it, and what hisses. A turn made so slowly that every angle is a standstill is the hardest that an engine has to
 * make; what the wheel must carry it over is the work that is missing on the way.
 */
import { buildEngine } from '../../model/engine.ts';
import { initialState } from '../../model/initial-state.ts';
import { engineSystem, type EngineSystem } from '../../model/system.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { StandStill } from '../../run/result.ts';
import { standStill } from '../../run/stand-still.ts';
import { engineStepper, QUICK } from '../../run/stepper.ts';
import { torqueBalance } from '../../run/torque-balance.ts';

export interface Standing extends StandStill {
  /** Crank angle [rad]. */
  readonly angle: number;
  /** Torque of air and weight, positive forward, and what must be exceeded to move either way [N m]. */
  readonly applied: number;
  readonly holding: number;
  /** Whether the first end's ports are open. */
  readonly admission: boolean;
  readonly exhaust: boolean;
}

const STEPS = 36;
export const STEP_ANGLE = (2 * Math.PI) / STEPS;
/** Long enough for chest and cylinder to fill through the ports; leaks may go on [s]. */
const PATIENCE = 2;
const STEP_LIMIT = 20_000;

/** At every place of a turn, from top dead centre on; places where the model gives up are left out. */
export function restScan(spec: EngineSpec): Standing[] {
  const system = engineSystem(buildEngine(spec));
  return Array.from({ length: STEPS }, (_, i) => i * STEP_ANGLE).flatMap(
    (angle) => standingAt(system, angle) ?? [],
  );
}

export function standingAt(system: EngineSystem, angle: number): Standing | undefined {
  const stepper = engineStepper(system, QUICK);
  const y = initialState(system, angle, 0);
  const arrival = stepper.inTime(0, y, PATIENCE, { stepLimit: STEP_LIMIT });
  if (arrival.reason !== 'end') return undefined;
  const [end] = system.engine.ends;
  return {
    angle,
    ...torqueBalance(system, y),
    ...standStill(system, y),
    admission: end.admission.effectiveArea(angle, 0) > 0,
    exhaust: end.exhaust.effectiveArea(angle, 0) > 0,
  };
}

/** A stretch of the turn over which the air alone does not push hard enough. */
export interface DeadStretch {
  readonly from: number;
  readonly to: number;
  /** Work that is missing over it [J]. */
  readonly work: number;
}

/** The worst stretch, going forward round and round; `undefined` when the air carries it everywhere. */
export function worstStretch(scan: readonly Standing[]): DeadStretch | undefined {
  const missing = scan.map(({ applied, holding }) => holding - applied);
  const begin = missing.findIndex((value) => value <= 0);
  if (missing.every((value) => value <= 0)) return undefined;
  if (begin < 0) return { from: 0, to: 2 * Math.PI, work: missing.reduce((a, b) => a + b, 0) * STEP_ANGLE };
  let worst: DeadStretch | undefined;
  let open: DeadStretch | undefined;
  for (let i = 0; i <= scan.length; i += 1) {
    const index = (begin + i) % scan.length;
    const { angle } = scan[index]!;
    if (missing[index]! > 0) {
      open = { from: open?.from ?? angle, to: angle, work: (open?.work ?? 0) + missing[index]! * STEP_ANGLE };
    } else open = undefined;
    if (open !== undefined && open.work > (worst?.work ?? 0)) worst = open;
  }
  return worst;
}
