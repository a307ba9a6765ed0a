/** What only the drawings of a slide valve, its face and its eccentric ask for. Everything here has a default. */
import { choice, group, quantity } from '../../kinds/describe.ts';
import { turnings } from './turnings.ts';

export const slideValveMaking = group(
  'How valve, port face and eccentric are made; only the drawings ask for it.',
  {
    valve_height: quantity(
      'length',
      { min: 1e-3, max: 0.1, default: 10e-3 },
      '10 mm',
      'Height of the valve.',
    ),
    face_thickness: quantity(
      'length',
      { min: 1e-3, max: 0.1, default: 8e-3 },
      '8 mm',
      'Plate that the port face is made of.',
    ),
    eccentric_thickness: quantity(
      'length',
      { min: 1e-3, max: 0.05, default: 6e-3 },
      '6 mm',
      'Plate that the eccentric is cut from.',
    ),
    shaft_diameter: quantity(
      'length',
      { min: 3e-3, max: 0.2, default: 12e-3 },
      '12 mm',
      'Crankshaft where the eccentric sits.',
    ),
    turning: choice(
      turnings,
      'Which way the shaft turns, seen on the side that the drawing of the eccentric shows.',
      'clockwise',
    ),
  },
);
