/** What only the drawings of an oscillating cylinder's faces ask for. Everything here has a default. */
import { choice, group, quantity } from '../../kinds/describe.ts';
import { turnings } from './turnings.ts';

export const oscillatingCylinderMaking = group('How the faces are made; only the drawings ask for it.', {
  standing_thickness: quantity(
    'length',
    { min: 1e-3, max: 0.1, default: 8e-3 },
    '8 mm',
    'Plate that the standing face is made of.',
  ),
  cylinder_thickness: quantity(
    'length',
    { min: 1e-3, max: 0.1, default: 5e-3 },
    '5 mm',
    'Plate that the face on the cylinder is made of.',
  ),
  turning: choice(
    turnings,
    'Which way the crank turns, seen on the standing face from the side of the cylinder.',
    'clockwise',
  ),
});
