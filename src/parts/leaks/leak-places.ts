/** Where the air of a leak may get from and to, as a builder says it. */
import { choice } from '../../kinds/describe.ts';
import type { Place } from '../passage.ts';

export const leakPlaces = {
  'chest to room': { from: 'chest', to: 'atmosphere' },
  'cylinder to room': { from: 'cylinder', to: 'atmosphere' },
  'chest to cylinder': { from: 'chest', to: 'cylinder' },
} as const satisfies Record<string, { from: Place; to: Place }>;

export const between = choice(
  Object.keys(leakPlaces) as (keyof typeof leakPlaces)[],
  'Where the air gets from and to.',
);
