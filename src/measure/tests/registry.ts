/** Every bench test, in the order of the help. To add one: a file beside this one and a line here. */
import type { BenchTestFamily } from '../test-context.ts';
import { breakAwayTest } from './break-away.ts';
import { coastDownTest } from './coast-down.ts';
import { pressureDecayTest } from './pressure-decay.ts';
import { pumpUpTest } from './pump-up.ts';
import { runningLogTest } from './running-log.ts';

export const benchTests: BenchTestFamily = {
  name: 'bench test',
  kinds: [pressureDecayTest, coastDownTest, breakAwayTest, pumpUpTest, runningLogTest],
};
