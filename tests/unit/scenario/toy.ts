/** A small description with one parameter of every type, for tests of the reader. */
import {
  choice,
  count,
  crankPosition,
  formula,
  group,
  optional,
  optionalGroup,
  part,
  partList,
  pureNumber,
  quantity,
  text,
} from '../../../src/kinds/describe.ts';
import { kindOf, type Family } from '../../../src/kinds/kind.ts';

const brake = kindOf({
  kind: 'brake',
  doc: 'A block on the rim.',
  parameters: {
    torque: quantity('torque', { min: 0, max: 10 }, '2 N m', 'Torque.'),
    blocks: count({ min: 1, max: 4, default: 2 }, 'How many blocks.'),
  },
  build: ({ torque, blocks }, factor: number) => torque * blocks * factor,
});

const idle = kindOf({ kind: 'idle', doc: 'Nothing.', parameters: {}, build: () => 0 });

const loads: Family<number, number> = { name: 'load', kinds: [brake, idle] };

export const toy = {
  title: text(20, 'What it is called.', 'untitled'),
  atmosphere: group('The room.', {
    pressure: quantity(
      'pressure',
      { min: 5e4, max: 1.2e5, default: 101_325 },
      '1013 mbar absolute',
      'Air pressure.',
    ),
  }),
  bore: quantity('length', { min: 1e-3, max: 0.1 }, '16 mm', 'Inside diameter.'),
  supply_pressure: quantity('pressure', { min: 1e5, max: 1e6, default: 5e5 }, '4 bar gauge', 'Supply.'),
  advance: quantity('angle', { min: -2 * Math.PI, max: 2 * Math.PI, default: 0 }, '30 deg', 'Advance.'),
  clearance: pureNumber({ min: 0, max: 1, default: 0.1 }, '8 %', 'Dead space.'),
  spokes: count({ min: 3, max: 8, default: 5 }, 'Spokes of the wheel.'),
  metal: choice(['steel', 'brass'], 'What it is made of.', 'steel'),
  cut_off: crankPosition('35 % of stroke', 'Where admission ends.', undefined, {
    by: 'outward stroke',
    fraction: 0.5,
  }),
  lap: optional(quantity('length', { min: 0, max: 0.01 }, '2 mm', 'Lap.')),
  drag: optional(
    formula({
      variable: 'rpm',
      variablePerSi: 30 / Math.PI,
      result: 'torque',
      doc: 'Drag.',
      example: '0.001*rpm',
    }),
  ),
  receiver: optionalGroup('The receiver.', {
    volume: quantity('volume', { min: 0, max: 1 }, '50 L', 'Size.'),
  }),
  load: part(loads, 'What it drives.', 'idle'),
  more_loads: partList(loads, 2, 'Further loads.'),
};
