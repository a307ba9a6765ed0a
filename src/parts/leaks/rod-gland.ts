/** The gland of a piston rod: an annulus from the crank end of a double-acting cylinder to the room. */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { annulusResistance } from '../../gas/gap.ts';
import { clearance, clearanceComplaints, clearanceOf } from '../fits/clearance.ts';
import type { PartContext } from '../part-context.ts';
import { gap, type Passage } from '../passage.ts';
import { measuring } from '../measuring.ts';

export const rodGlandLeak = kindOf({
  kind: 'rod gland',
  doc: 'Air along the piston rod of a double-acting cylinder.',
  parameters: {
    clearance: clearance(
      '10 um',
      'Play of the rod in the gland, packing taken into account: radial, half the difference of the diameters, or as a fit or two finishes.',
      measuring.clearance,
      'cylinder.piston_rod_diameter',
    ),
    length: quantity(
      'length',
      { min: 1e-4, max: 0.5 },
      '15 mm',
      'Length of gland that seals.',
      'Depth gauge down the gland.',
    ),
    eccentricity: pureNumber(
      { min: 0, max: 1, default: 1 },
      '1',
      'Offset over clearance: 0 runs centred, 1 lies on the wall.',
    ),
  },
  complaints: (own, context: PartContext): readonly Complaint[] =>
    context.doubleActing
      ? clearanceComplaints(['clearance'], 'piston rod', context.rodDiameter, own.clearance)
      : [
          {
            path: ['kind'],
            expected: 'a double-acting cylinder; a single-acting one has no gland',
            received: 'a rod gland',
          },
        ],
  build: ({ clearance: play, length, eccentricity }, { gas, rodDiameter }): Passage => {
    const c = clearanceOf(rodDiameter, play).mean;
    return gap(
      gas,
      { name: 'along the piston rod', from: 'other end', to: 'atmosphere' },
      c === 0 ? Infinity : annulusResistance(rodDiameter, c, length, eccentricity),
      Math.PI * rodDiameter * c,
    );
  },
});
