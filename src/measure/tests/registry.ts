/** Every bench test, in the order of the help. To add one: a file beside this one and a line here. */
import type { BenchTestFamily } from '../test-context.ts';
import { pressureDecayTest } from './pressure-decay.ts';

export const benchTests: BenchTestFamily = { name: 'bench test', kinds: [pressureDecayTest] };
