/** Newton's law with a constant coefficient: Q̇ = h A (T_wall − T). */
import { optional, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { WallHeat } from './wall-heat.ts';

export const constantWallHeat = kindOf({
  kind: 'constant',
  doc: 'A constant heat transfer coefficient over both ends and the uncovered barrel.',
  parameters: {
    coefficient: quantity(
      'heat transfer coefficient',
      { min: 0, max: 1e5 },
      '100 W/(m^2 K)',
      'Heat per area and temperature difference; 30 to 300 W/(m² K) is common in small slow cylinders.',
      'Nobody measures this. Take 80 W/(m² K) and try half and double: it moves the answer little.',
    ),
    wall_temperature: optional(
      quantity(
        'temperature',
        { min: 200, max: 800 },
        '15 degC',
        'Mean wall temperature; the room if not given.',
        'A thermocouple or a contact thermometer under a dab of grease, outside, half way along the barrel, ' +
          'when the engine has run for a quarter of an hour.',
      ),
    ),
  },
  build: ({ coefficient, wall_temperature }, context: PartContext): WallHeat => {
    const wallTemperature = wall_temperature ?? context.atmosphericTemperature;
    return {
      flow: (area, gasTemperature) => coefficient * area * (wallTemperature - gasTemperature),
      law: { kind: 'steady', coefficient, wallTemperature },
    };
  },
});
