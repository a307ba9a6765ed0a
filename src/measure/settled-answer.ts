/**
 * What the instruments beside a running engine would show by the model: speed, air, and the exhaust as a thermometer in
 * the pipe has it, the mean of the outgoing air by its mass.
 */
import { constantLoad } from '../parts/loads/constant.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import type { SettledCycle } from '../run/result.ts';
import { runEngine } from '../run/run-engine.ts';

/** How it was run, as far as that was read; the scenario says the rest. */
export interface RunningConditions {
  /** [Pa absolute]. */
  readonly supplyPressure?: number | undefined;
  /** Torque of a brake in place of the load of the scenario [N m]. */
  readonly loadTorque?: number | undefined;
  /** Speed it was seen to run at [rad/s]: the model is let go there and settles from it. */
  readonly near: number;
  readonly room?: { readonly pressure: number; readonly temperature: number };
}

export interface SettledAnswer {
  /** [rad/s]. */
  readonly speed: number;
  /** [m³/s ANR]. */
  readonly airFlow: number;
  /** [K]. */
  readonly exhaustTemperature: number;
}

export function underConditions(spec: EngineSpec, conditions: RunningConditions): EngineSpec {
  const { supplyPressure, loadTorque, near, room } = conditions;
  return {
    ...spec,
    ...(room === undefined ? {} : { atmosphere: { ...spec.atmosphere, ...room } }),
    ...(loadTorque === undefined ? {} : { load: constantLoad.choose({ torque: loadTorque }) }),
    supply: { ...spec.supply, ...(supplyPressure === undefined ? {} : { pressure: supplyPressure }) },
    start: { ...spec.start, hand_speed: near },
  };
}

/** `undefined` when it does not go on running. */
export function settledAnswer(spec: EngineSpec, conditions: RunningConditions): SettledAnswer | undefined {
  const { settled } = runEngine(underConditions(spec, conditions));
  if (settled === undefined) return undefined;
  return {
    speed: settled.speed,
    airFlow: settled.airFlowAnr,
    exhaustTemperature: exhaustTemperature(settled),
  };
}

/** Mean of what leaves by the exhaust ports, by its mass [K]; the places of the passages are those of the profile. */
function exhaustTemperature({ profile, passages }: SettledCycle): number {
  let mass = 0;
  let heat = 0;
  const outlets = passages.flatMap(({ role }, i) => (role === 'exhaust' ? [i] : []));
  outlets.forEach((passage, end) => {
    const flow = profile.massFlow[passage]!;
    const { temperature } = profile.ends[end]!;
    for (let i = 1; i < flow.length; i += 1) {
      const out = Math.max(0, flow[i]!) * (profile.time[i]! - profile.time[i - 1]!);
      mass += out;
      heat += out * temperature[i]!;
    }
  });
  return heat / mass;
}
