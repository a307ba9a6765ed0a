/** Every kind of load. To add one: a file beside this one and a line here. */
import { constantLoad } from './constant.ts';
import { fanLoad } from './fan.ts';
import { formulaLoad } from './formula.ts';
import type { LoadFamily } from './load.ts';
import { proportionalLoad } from './proportional.ts';

export const loads: LoadFamily = {
  name: 'load',
  kinds: [constantLoad, proportionalLoad, fanLoad, formulaLoad],
};
