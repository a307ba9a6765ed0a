/** What an engine at rest under air shows: the pressures that reach it, and every leak that hisses. */
import { referenceVolumeFlow } from '../gas/reference-atmosphere.ts';
import { fromSupply } from '../model/from-supply.ts';
import type { EngineSystem } from '../model/system.ts';
import type { StandStill } from './result.ts';

export function standStill(system: EngineSystem, y: Float64Array): StandStill {
  const { pressure, massFlow } = system.observe(y);
  const { passages, chest, ends, gas } = system.engine;
  const leaks = passages
    .map(({ name, role }, i) => ({ name, role, massFlow: massFlow[i]! }))
    .filter((passage) => passage.role === 'leak' && passage.massFlow > 0)
    .toSorted((a, b) => b.massFlow - a.massFlow)
    .map(({ name, massFlow: flow }) => ({ name, massFlow: flow }));
  return {
    chestPressure: pressure[chest]!,
    cylinderPressure: pressure[ends[0].place]!,
    airFlowAnr: referenceVolumeFlow(gas, fromSupply(system.engine, massFlow)),
    leaks,
  };
}
