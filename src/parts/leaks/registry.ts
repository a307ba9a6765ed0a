/** Every kind of extra leak. To add one: a file beside this one and a line here. */
import { holeLeak } from './hole.ts';
import type { LeakFamily } from './leak.ts';
import { plainPistonLeak } from './plain-piston.ts';
import { pressureDecayLeak } from './pressure-decay.ts';
import { rodGlandLeak } from './rod-gland.ts';

export const leaks: LeakFamily = {
  name: 'leak',
  kinds: [plainPistonLeak, rodGlandLeak, holeLeak, pressureDecayLeak],
};
