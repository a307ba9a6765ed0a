/** A plain piston without rings: an annulus from the cover end to the open crank end, or to the working one. */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { annulusResistance } from '../../gas/gap.ts';
import type { PartContext } from '../part-context.ts';
import { fixedGap, type Passage } from '../passage.ts';

export const plainPistonLeak = kindOf({
  kind: 'plain piston',
  doc: 'Air past a piston without rings, to the open crank end or, double-acting, to the other working end.',
  parameters: {
    radial_clearance: quantity(
      'length',
      { min: 0, max: 1e-3 },
      '20 um',
      'Half the difference between bore and piston diameter.',
    ),
    length: quantity('length', { min: 1e-4, max: 1 }, '40 mm', 'Length of piston that seals.'),
    eccentricity: pureNumber(
      { min: 0, max: 1, default: 1 },
      '1',
      'Offset over clearance: 0 runs centred, 1 lies on the wall, as nothing centres a plain piston.',
    ),
  },
  build: ({ radial_clearance: c, length, eccentricity }, context: PartContext): Passage =>
    fixedGap(
      context.gas,
      { name: 'past the piston', from: 'cylinder', to: context.doubleActing ? 'other end' : 'atmosphere' },
      c === 0 ? Infinity : annulusResistance(context.bore, c, length, eccentricity),
      Math.PI * context.bore * c,
    ),
});
