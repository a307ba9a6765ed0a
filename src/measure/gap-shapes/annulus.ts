/** Between a rod, spool or piston and its bore, concentric. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { annulusResistance } from '../../gas/gap.ts';
import type { GapShape } from './gap-shape.ts';

export const annulus = kindOf({
  kind: 'annulus',
  doc: 'Between a rod, spool or piston and its bore.',
  parameters: {
    diameter: quantity('length', { min: 1e-3, max: 0.5 }, '50 mm', 'Diameter of the bore.'),
    length: quantity('length', { min: 1e-4, max: 0.5 }, '45 mm', 'Length of the land along the bore.'),
  },
  build: ({ diameter, length }, _context: unknown): GapShape => ({
    heightName: 'radial clearance',
    resistance: (height) => annulusResistance(diameter, height, length, 0),
    section: (height) => Math.PI * diameter * height,
  }),
});
