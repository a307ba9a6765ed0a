/** Between two straight faces, the air crossing a land. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { slitResistance } from '../../gas/gap.ts';
import type { GapShape } from './gap-shape.ts';

export const slit = kindOf({
  kind: 'slit',
  doc: 'Between two straight faces: a slide on its table, a cover on its gasket.',
  parameters: {
    width: quantity('length', { min: 1e-4, max: 2 }, '80 mm', 'Along the edge that the air crosses.'),
    length: quantity('length', { min: 1e-4, max: 0.5 }, '6 mm', 'Way of the air across the land.'),
  },
  build: ({ width, length }, _context: unknown): GapShape => ({
    heightName: 'gap',
    resistance: (height) => slitResistance(length, width, height),
    section: (height) => width * height,
  }),
});
