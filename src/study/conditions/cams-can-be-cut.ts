/** Its cams can be cut from plate of a size. */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { lacking, type Condition } from './condition.ts';

export const camsCanBeCut = kindOf({
  kind: 'cams can be cut',
  doc:
    'A base circle is large enough for cams that are nowhere undercut, nor sharper or steeper than the scenario allows ' +
    '(`smallest_radius`, `largest_pressure_angle`). An engine without cams has none to cut.',
  parameters: {
    base_circle: quantity(
      'length',
      { min: 4e-3, max: 1 },
      '44 mm',
      'Diameter of the largest base circle that there is room for.',
    ),
  },
  build: ({ base_circle }, _context: null): Condition => ({
    get words() {
      return `gets by with cams on base circles of at most ${formatQuantity(base_circle, 'length')}`;
    },
    needs: 'cams',
    margin: ({ values: { baseCircle } }) =>
      baseCircle === undefined ? 1 : lacking(1 - baseCircle / base_circle),
  }),
});
