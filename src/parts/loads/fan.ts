/** A load that grows with the square of the speed: a fan, a centrifugal pump, a propeller. */
import { kindOf } from '../../kinds/kind.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { PartContext } from '../part-context.ts';
import { torqueAtSpeed } from './growing.ts';
import type { Load } from './load.ts';
import { quadraticLoad } from './quadratic.ts';

export const fanLoad = kindOf({
  kind: 'fan',
  doc: 'Torque with the square of the speed: a fan, a blower, a centrifugal pump.',
  parameters: torqueAtSpeed,
  build: ({ torque, at_speed }, _context: PartContext): Load =>
    quadraticLoad(0, 0, torque / square(at_speed)),
});
