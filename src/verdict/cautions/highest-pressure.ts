/** The pressure that the parts have to stand: what stands in front of the regulator, for a regulator can fail. */
import type { EngineFacts } from '../../run/result.ts';
import { gaugeText } from '../figures.ts';

/** Whether anything is known of what feeds the regulator. */
export const upstreamIsKnown = ({ regulatorInlet, receiver }: EngineFacts): boolean =>
  regulatorInlet !== undefined || receiver !== undefined;

/** [Pa absolute]; never less than the pressure the regulator is set to. */
export const highestPressure = ({ supplyPressure, regulatorInlet, receiver }: EngineFacts): number =>
  Math.max(supplyPressure, regulatorInlet ?? 0, receiver?.pressure ?? 0);

/** The same in words, and how far it can be relied on. */
export function highestPressureText(engine: EngineFacts): string {
  const text = gaugeText(highestPressure(engine), engine.atmosphericPressure);
  return upstreamIsKnown(engine)
    ? `${text}, the highest pressure there is if the regulator fails`
    : `${text}, the pressure set; what stands in front of the regulator is not described and takes its place if it fails`;
}
