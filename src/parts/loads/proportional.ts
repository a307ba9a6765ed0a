/** A load that grows with the speed: a small generator on a resistor, an oil-filled brake. */
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { torqueAtSpeed } from './growing.ts';
import type { Load } from './load.ts';
import { quadraticLoad } from './quadratic.ts';

export const proportionalLoad = kindOf({
  kind: 'proportional',
  doc: 'Torque in proportion to speed: a small generator on a resistor, a stirrer in thick stuff.',
  parameters: torqueAtSpeed,
  build: ({ torque, at_speed }, _context: PartContext): Load => quadraticLoad(0, torque / at_speed, 0),
});
