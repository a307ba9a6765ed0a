/** Between two flat faces, the air spreading from an inner circle to an outer one. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { filmResistance, radialShapeFactor } from '../../gas/gap.ts';
import type { GapShape } from './gap-shape.ts';

export const ringFace = kindOf({
  kind: 'ring face',
  doc: 'Between two flat faces from an inner to an outer circle: a disc on its plate, a flange.',
  parameters: {
    inner_diameter: quantity('length', { min: 1e-4, max: 0.5 }, '10 mm', 'Where the air enters.'),
    outer_diameter: quantity('length', { min: 2e-4, max: 1 }, '90 mm', 'Where it leaves.'),
  },
  complaints: ({ inner_diameter: inner, outer_diameter: outer }): readonly Complaint[] =>
    inner < outer
      ? []
      : [
          {
            path: ['inner_diameter'],
            expected: `less than the outer diameter, ${Number((outer * 1e3).toPrecision(4))} mm`,
            received: `${Number((inner * 1e3).toPrecision(4))} mm`,
          },
        ],
  build: ({ inner_diameter: inner, outer_diameter: outer }, _context: unknown): GapShape => ({
    heightName: 'gap',
    resistance: (height) => filmResistance(radialShapeFactor(inner, outer), height),
    section: (height) => Math.PI * inner * height,
  }),
});
