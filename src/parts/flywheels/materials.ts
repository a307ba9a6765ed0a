/** Densities [kg/m³] of flywheel materials. Handbook values, rounded; common practice, no source. */
import { choice } from '../../kinds/describe.ts';

const densities = {
  steel: 7850,
  'cast iron': 7200,
  brass: 8500,
  aluminium: 2700,
  concrete: 2300,
  'beech wood': 700,
} as const;

export type Material = keyof typeof densities;

export const material = choice(
  Object.keys(densities) as Material[],
  'What the flywheel is made of.',
  'steel',
);

export const density = (name: Material): number => densities[name];
