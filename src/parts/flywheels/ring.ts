/** A rim on light spokes, the spokes neglected: m = ρ π (r_o² − r_i²) t, J = ½ m (r_o² + r_i²). */
import { quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { discInertia } from './disc.ts';
import type { Flywheel } from './flywheel.ts';
import { density, material } from './materials.ts';

export const ringFlywheel = kindOf({
  kind: 'ring',
  doc: 'A heavy rim on light spokes; the spokes are neglected.',
  parameters: {
    outer_diameter: quantity(
      'length',
      { min: 5e-3, max: 3 },
      '400 mm',
      'Outer diameter of the rim.',
      'A tape round the rim, divided by 3.1416.',
    ),
    inner_diameter: quantity(
      'length',
      { min: 1e-3, max: 3 },
      '320 mm',
      'Inner diameter of the rim.',
      'Outer diameter less twice the depth of the rim.',
    ),
    thickness: quantity(
      'length',
      { min: 1e-4, max: 1 },
      '30 mm',
      'Width of the rim along the shaft.',
      'Callipers across the rim.',
    ),
    material,
  },
  complaints: (values): readonly Complaint[] =>
    values.inner_diameter < values.outer_diameter
      ? []
      : [
          {
            path: ['inner_diameter'],
            expected: `less than the outer diameter, ${(values.outer_diameter * 1e3).toFixed(1)} mm`,
            received: `${(values.inner_diameter * 1e3).toFixed(1)} mm`,
          },
        ],
  build: (values, _context: PartContext): Flywheel => {
    const rho = density(values.material);
    const outer = values.outer_diameter / 2;
    const inertia =
      discInertia(outer, values.thickness, rho) -
      discInertia(values.inner_diameter / 2, values.thickness, rho);
    return { momentOfInertia: inertia, rim: { radius: outer, density: rho } };
  },
});
