/** Every kind of flywheel. To add one: a file beside this one and a line here. */
import { discFlywheel } from './disc.ts';
import type { FlywheelFamily } from './flywheel.ts';
import { givenFlywheel } from './given.ts';
import { ringFlywheel } from './ring.ts';

export const flywheels: FlywheelFamily = {
  name: 'flywheel',
  kinds: [givenFlywheel, discFlywheel, ringFlywheel],
};
