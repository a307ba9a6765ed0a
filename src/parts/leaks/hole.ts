/** A hole that should not be there, or a gasket that weeps: a small orifice that is always open. */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { PartContext } from '../part-context.ts';
import { hole, type Passage } from '../passage.ts';
import { between, leakPlaces } from './leak-places.ts';
import { measuring } from '../measuring.ts';

export const holeLeak = kindOf({
  kind: 'hole',
  doc: 'A small hole that is always open: a weeping gasket, a forgotten screw.',
  parameters: {
    between,
    diameter: quantity(
      'length',
      { min: 0, max: 0.02 },
      '0.5 mm',
      'Diameter of an equal round hole.',
      'Find the place with soapy water. Then time the gauge and try until the leak agrees, or guess: a ' +
        'bubbling thread is some 0.2 mm, a hiss 0.5 mm (common practice, no source).',
    ),
    discharge_coefficient: pureNumber(
      { min: 0.3, max: 1, default: 0.65 },
      '0.65',
      'Sharp edges 0.6–0.7.',
      measuring.dischargeCoefficient,
    ),
  },
  build: (values, context: PartContext): Passage =>
    hole(
      context.gas,
      { ...leakPlaces[values.between], name: `hole from ${values.between}` },
      (values.discharge_coefficient * Math.PI * square(values.diameter)) / 4,
    ),
});
