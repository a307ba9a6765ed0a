/** Every law for heat between wall and gas. To add one: a file beside this one and a line here. */
import { constantWallHeat } from './constant.ts';
import { correlationWallHeat } from './correlation.ts';
import { noWallHeat } from './none.ts';
import type { WallHeatFamily } from './wall-heat.ts';

export const wallHeats: WallHeatFamily = {
  name: 'wall heat',
  kinds: [noWallHeat, constantWallHeat, correlationWallHeat],
};
