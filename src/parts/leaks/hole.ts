/** A hole that should not be there, or a gasket that weeps: a small orifice that is always open. */
import { choice, pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { hole, type Passage, type Place } from '../passage.ts';

const ends = {
  'chest to room': { name: 'hole from chest to room', from: 'chest', to: 'atmosphere' },
  'cylinder to room': { name: 'hole from cylinder to room', from: 'cylinder', to: 'atmosphere' },
  'chest to cylinder': { name: 'hole from chest to cylinder', from: 'chest', to: 'cylinder' },
} as const satisfies Record<string, { name: string; from: Place; to: Place }>;

export const holeLeak = kindOf({
  kind: 'hole',
  doc: 'A small hole that is always open: a weeping gasket, a forgotten screw.',
  parameters: {
    between: choice(Object.keys(ends) as (keyof typeof ends)[], 'Where the air gets from and to.'),
    diameter: quantity('length', { min: 0, max: 0.02 }, '0.5 mm', 'Diameter of an equal round hole.'),
    discharge_coefficient: pureNumber({ min: 0.3, max: 1, default: 0.65 }, '0.65', 'Sharp edges 0.6–0.7.'),
  },
  build: (values, context: PartContext): Passage =>
    hole(
      context.gas,
      ends[values.between],
      (values.discharge_coefficient * Math.PI * values.diameter ** 2) / 4,
    ),
});
