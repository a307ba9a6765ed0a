/** A plain piston without rings: an annulus from the cover end to the open crank end, or to the working one. */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { annulusResistance } from '../../gas/gap.ts';
import { clearance, clearanceComplaints, clearanceOf } from '../fits/clearance.ts';
import type { PartContext } from '../part-context.ts';
import { gap, type Passage } from '../passage.ts';

export const plainPistonLeak = kindOf({
  kind: 'plain piston',
  doc: 'Air past a piston without rings, to the open crank end or, double-acting, to the other working end.',
  parameters: {
    clearance: clearance(
      '20 um',
      'Play of the piston in its bore: radial, half the difference of the diameters, or as a fit or two finishes.',
      'Half of: bore less piston, by micrometer and bore gauge. Or the fit, or how the two were finished; ' +
        'or time the gauge.',
      'cylinder.bore',
    ),
    length: quantity(
      'length',
      { min: 1e-4, max: 1 },
      '40 mm',
      'Length of piston that seals.',
      'Callipers along the piston, oil grooves taken off.',
    ),
    eccentricity: pureNumber(
      { min: 0, max: 1, default: 1 },
      '1',
      'Offset over clearance: 0 runs centred, 1 lies on the wall, as nothing centres a plain piston.',
    ),
  },
  complaints: (own, { bore }: PartContext) =>
    clearanceComplaints(['clearance'], 'cylinder bore', bore, own.clearance),
  build: ({ clearance: play, length, eccentricity }, context): Passage => {
    const c = clearanceOf(context.bore, play).mean;
    return gap(
      context.gas,
      { name: 'past the piston', from: 'cylinder', to: context.doubleActing ? 'other end' : 'atmosphere' },
      c === 0 ? Infinity : annulusResistance(context.bore, c, length, eccentricity),
      Math.PI * context.bore * c,
    );
  },
});
