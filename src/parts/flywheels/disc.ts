/** A plain disc: m = ρ π r² t, J = ½ m r². */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { PartContext } from '../part-context.ts';
import type { Flywheel } from './flywheel.ts';
import { density, material } from './materials.ts';

/** J [kg m²] of a disc: radius, thickness [m], density [kg/m³]. */
export const discInertia = (radius: number, thickness: number, rho: number): number =>
  0.5 * rho * Math.PI * square(square(radius)) * thickness;

export const discFlywheel = kindOf({
  kind: 'disc',
  doc: 'A solid disc of even thickness.',
  parameters: {
    diameter: quantity(
      'length',
      { min: 5e-3, max: 3 },
      '300 mm',
      'Outer diameter.',
      'A rule across the disc, through the centre.',
    ),
    thickness: quantity(
      'length',
      { min: 1e-4, max: 1 },
      '20 mm',
      'Thickness.',
      'Callipers at the rim; of a turned or cast disc at three places.',
    ),
    material,
  },
  build: (values, _context: PartContext): Flywheel => {
    const radius = values.diameter / 2;
    const rho = density(values.material);
    return { momentOfInertia: discInertia(radius, values.thickness, rho), rim: { radius, density: rho } };
  },
});
