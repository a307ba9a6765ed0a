/** What only the drawings of a disc valve's plates ask for. Everything here has a default. */
import { choice, count, group, optional, quantity } from '../../kinds/describe.ts';
import { turnings } from './turnings.ts';

export const plates = group('How disc and plates are made; only the drawings ask for it.', {
  disc_thickness: quantity(
    'length',
    { min: 5e-4, max: 0.05, default: 4e-3 },
    '4 mm',
    'Plate that the disc is cut from.',
  ),
  plate_thickness: quantity(
    'length',
    { min: 1e-3, max: 0.05, default: 8e-3 },
    '8 mm',
    'Plate that the front and back plates are cut from.',
  ),
  plate_diameter: optional(
    quantity(
      'length',
      { min: 10e-3, max: 1.2 },
      '130 mm',
      'Outer diameter of the plates; if not given, as large as the bolts round the disc need.',
    ),
  ),
  bolts: count(
    { min: 3, max: 12, default: 6 },
    'How many bolts hold the stack together, each with its spacer.',
  ),
  bolt_diameter: quantity(
    'length',
    { min: 2e-3, max: 0.016, default: 5e-3 },
    '5 mm',
    'Nominal thread diameter of the bolts.',
  ),
  dowel_diameter: quantity(
    'length',
    { min: 1e-3, max: 0.016, default: 4e-3 },
    '4 mm',
    'Two dowels that keep the holes of both plates in line.',
  ),
  adjustment: quantity(
    'angle',
    { min: 0, max: (60 * Math.PI) / 180, default: (20 * Math.PI) / 180 },
    '20 deg',
    'Range over which the timing slots let the stack be turned on the engine, half of it to either side.',
  ),
  key_width: quantity(
    'length',
    { min: 0, max: 0.02, default: 4e-3 },
    '4 mm',
    'Width of the key between shaft and disc; zero for a round hole.',
  ),
  key_depth: quantity(
    'length',
    { min: 2e-4, max: 0.01, default: 1.8e-3 },
    '1.8 mm',
    'How far the keyway reaches beyond the shaft.',
  ),
  admission_hole_at: quantity(
    'angle',
    { min: -2 * Math.PI, max: 2 * Math.PI, default: Math.PI / 2 },
    '90 deg',
    'Where the admission hole sits in the plates, anticlockwise from the right.',
  ),
  exhaust_hole_at: quantity(
    'angle',
    { min: -2 * Math.PI, max: 2 * Math.PI, default: -Math.PI / 2 },
    '-90 deg',
    'Where the exhaust hole sits in the plates, anticlockwise from the right.',
  ),
  turning: choice(turnings, 'Which way the disc turns, seen on the front plate.', 'clockwise'),
});
