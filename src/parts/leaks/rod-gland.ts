/** The gland of a piston rod: an annulus from the crank end of a double-acting cylinder to the room. */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { annulusResistance } from '../../gas/gap.ts';
import type { PartContext } from '../part-context.ts';
import { fixedGap, type Passage } from '../passage.ts';

export const rodGlandLeak = kindOf({
  kind: 'rod gland',
  doc: 'Air along the piston rod of a double-acting cylinder.',
  parameters: {
    radial_clearance: quantity(
      'length',
      { min: 0, max: 1e-3 },
      '10 um',
      'Half the difference between gland bore and rod diameter, packing taken into account.',
    ),
    length: quantity('length', { min: 1e-4, max: 0.5 }, '15 mm', 'Length of gland that seals.'),
    eccentricity: pureNumber(
      { min: 0, max: 1, default: 1 },
      '1',
      'Offset over clearance: 0 runs centred, 1 lies on the wall.',
    ),
  },
  complaints: (_values, context: PartContext): readonly Complaint[] =>
    context.doubleActing
      ? []
      : [
          {
            path: ['kind'],
            expected: 'a double-acting cylinder; a single-acting one has no gland',
            received: 'a rod gland',
          },
        ],
  build: ({ radial_clearance: c, length, eccentricity }, { gas, rodDiameter }: PartContext): Passage =>
    fixedGap(
      gas,
      { name: 'along the piston rod', from: 'other end', to: 'atmosphere' },
      c === 0 ? Infinity : annulusResistance(rodDiameter, c, length, eccentricity),
      Math.PI * rodDiameter * c,
    ),
});
