/** A flywheel whose moment of inertia is known, from a drawing program or a swing test. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Flywheel } from './flywheel.ts';

export const givenFlywheel = kindOf({
  kind: 'given',
  doc: 'A flywheel with a known moment of inertia, everything that turns with the shaft included.',
  parameters: {
    moment_of_inertia: quantity(
      'moment of inertia',
      { min: 1e-7, max: 1e5 },
      '0.05 kg m^2',
      'Moment of inertia about the shaft.',
      'Hang the wheel by the inside of its rim on a knife edge and time twenty small swings: J = m g d ' +
        'T²/(4π²) − m d², with mass m, time of one swing T, and d from the edge to the centre.',
    ),
  },
  build: (values, _context: PartContext): Flywheel => ({ momentOfInertia: values.moment_of_inertia }),
});
