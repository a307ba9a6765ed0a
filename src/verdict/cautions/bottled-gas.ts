/**
 * Gas from bottles displaces the air of a room. A closed, well mixed room of volume V, its oxygen at 20.9 %, has 19.5 %
 * left after V·ln(20.9/19.5) of gas has been let in and as much of the mixture pushed out. Below 19.5 % air counts as
 * deficient in oxygen: OSHA, 29 CFR 1910.134 (seen). The mixing rule is derived.
 */
import { log } from '../../numerics/elementary/logarithm.ts';
import type { RunResult } from '../../run/result.ts';
import { airText, minutesText } from '../figures.ts';
import type { Caution } from './caution.ts';

const OXYGEN_IN_AIR = 0.209;
const LEAST_OXYGEN = 0.195;

/** A garden shed, for the example [m³]. */
const SHED = 20;

/** Time [s] until a closed room [m³] is deficient in oxygen, for a gas let in at that rate [m³/s]. */
export const timeToOxygenDeficiency = (room: number, flow: number): number =>
  (room * log(OXYGEN_IN_AIR / LEAST_OXYGEN)) / flow;

export function bottledGasCaution(result: RunResult): Caution | undefined {
  const { gas } = result.engine;
  if (gas.origin !== 'bottles') return undefined;
  return {
    topic: 'Bottled gas',
    text: [
      `${gas.name.charAt(0).toUpperCase()}${gas.name.slice(1)} cannot be breathed and gives no warning: it displaces the air, and who ` +
        'breathes too much of it faints without noticing.',
      ...letIntoTheRoom(result),
      'Run it outdoors or lead the exhaust outdoors, with an oxygen alarm at hand. Use a bottle regulator and a relief ' +
        'valve that can pass all it gives, and chain the bottle upright; its own pressure is not in these figures. Local ' +
        'codes for gas bottles and the licensed supplier decide how it is kept and used.',
    ].join(' '),
    severity: 'danger',
  };
}

function letIntoTheRoom({ engine, settled, standStill }: RunResult): string[] {
  const flow = settled?.airFlowAnr ?? standStill?.airFlowAnr ?? 0;
  if (flow <= 0) return [];
  const minutes = timeToOxygenDeficiency(SHED, flow) / 60;
  return [
    `At ${airText(flow, engine.gas)} a closed shed of ${SHED} m³ falls from 20.9 % to 19.5 % oxygen, where OSHA calls air ` +
      `deficient, in ${minutesText(minutes)} (V·ln(20.9/19.5) of gas, well mixed).`,
  ];
}
