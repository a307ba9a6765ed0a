/**
 * What the instruments beside a running engine would show by the model: speed, air, and the exhaust as a thermometer in
 * the pipe has it, the mean of the outgoing air by its mass.
 */
import { gasNamed } from '../gas/registry.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { constantLoad } from '../parts/loads/constant.ts';
import type { SettledTurn } from '../run/result.ts';
import { settledRunning } from '../run/settled-running.ts';

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

function underConditions(spec: EngineSpec, conditions: RunningConditions): EngineSpec {
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
  const under = underConditions(spec, conditions);
  const { settled } = settledRunning(under);
  if (settled === undefined) return undefined;
  return {
    speed: settled.speed,
    airFlow: settled.airFlowAnr,
    exhaustTemperature: exhaustTemperature(under, settled),
  };
}

/**
 * Mean temperature [K] of what leaves by the exhaust, from the energy of a turn: what the air brought in, less its work,
 * plus the heat of the walls, goes out again; T = T_supply + (Q − W)/(cp m), with m the air that leaves by the exhaust.
 * What leaks to the room is taken to leave as warm as it came.
 */
function exhaustTemperature(spec: EngineSpec, { airMassFlow, period, passages, work }: SettledTurn): number {
  const supplied = spec.supply.temperature ?? spec.atmosphere.temperature;
  const leaked = passages.reduce(
    (sum, { role, to, mass }) => (role === 'leak' && to === 'room' ? sum + mass : sum),
    0,
  );
  const exhausted = airMassFlow * period - leaked;
  const { heatCapacityAtConstantPressure: cp } = gasNamed(spec.gas);
  return supplied + (work.wallHeat - work.indicated) / (cp * exhausted);
}
