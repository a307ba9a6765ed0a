/** Every gas a scenario can name. To add one: a file in `gases/` and a line here. */
import type { Gas } from './gas.ts';
import { dryAir } from './gases/dry-air.ts';
import { nitrogen } from './gases/nitrogen.ts';

export const gases: readonly Gas[] = [dryAir, nitrogen];

/** The gas of that name; the scenario reader only lets registered names through. */
export function gasNamed(name: string): Gas {
  const gas = gases.find((candidate) => candidate.name === name);
  if (gas === undefined) throw new Error(`no gas is registered as "${name}"`);
  return gas;
}
