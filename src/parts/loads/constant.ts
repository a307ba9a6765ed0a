/** A load that resists alike at every speed: a hoist, a press screw, a plain brake. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Load } from './load.ts';
import { quadraticLoad } from './quadratic.ts';

export const constantLoad = kindOf({
  kind: 'constant',
  doc: 'The same torque at every speed, also from rest: a screw press, a hoist, a friction brake.',
  parameters: {
    torque: quantity(
      'torque',
      { min: 0, max: 10_000 },
      '2 N m',
      'Torque at the crankshaft.',
      'Turn the machine with the air off by a cord round a pulley on its shaft and a spring balance: ' +
        'force times radius, times the gear ratio to the crankshaft. A hoist: weight times drum radius, ' +
        'through the ratio.',
    ),
  },
  build: ({ torque }, _context: PartContext): Load => quadraticLoad(torque, 0, 0),
});
