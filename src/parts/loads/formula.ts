/** A load given as a formula in the engine's speed, for measured brakes and odd machines. */
import { formula } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Load } from './load.ts';

export const formulaLoad = kindOf({
  kind: 'formula',
  doc: 'Torque in N m as a formula of the speed in rpm. Values below zero count as no load.',
  parameters: {
    torque: formula({
      variable: 'rpm',
      variablePerSi: 60 / (2 * Math.PI),
      result: 'torque',
      example: '0.4 + 0.002*rpm',
      doc: 'Torque in N m; the one variable is rpm.',
    }),
  },
  build: ({ torque }, _context: PartContext): Load => ({ torque: (speed) => Math.max(0, torque(speed)) }),
});
