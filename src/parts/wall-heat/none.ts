/** An adiabatic cylinder: the gas neither takes heat from the wall nor gives any. */
import { kindOf } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { WallHeat } from './wall-heat.ts';

export const noWallHeat = kindOf({
  kind: 'none',
  doc: 'Adiabatic: no heat between wall and gas. Fair for a quick engine; a slow one does a little better.',
  parameters: {},
  build: (_values, { atmosphericTemperature }: PartContext): WallHeat => ({
    flow: () => 0,
    law: { kind: 'steady', coefficient: 0, wallTemperature: atmosphericTemperature },
  }),
});
