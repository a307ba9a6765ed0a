/** A load given as a formula in the engine's speed, for measured brakes and odd machines. */
import { formula } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Load } from './load.ts';

/** Speeds at which a formula must give a number; rest is where most go wrong. */
const PROBED_RPM = [0, 1, 10, 30, 100, 300, 1000, 3000, 10_000];

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
      measure:
        'Measure the torque at two or three speeds, as for the other loads, and put a line or a curve ' +
        'through the points.',
    }),
  },
  complaints: ({ torque }): readonly Complaint[] => {
    const broken = PROBED_RPM.find((rpm) => !Number.isFinite(torque((rpm * 2 * Math.PI) / 60)));
    if (broken === undefined) return [];
    return [
      {
        path: ['torque'],
        expected: 'a finite torque at every speed from rest up',
        received: `none at ${broken} rpm`,
        hint: 'Divisions and logarithms go astray at 0 rpm; add a small number to rpm there.',
      },
    ];
  },
  build: ({ torque }, _context: PartContext): Load => ({ torque: (speed) => Math.max(0, torque(speed)) }),
});
