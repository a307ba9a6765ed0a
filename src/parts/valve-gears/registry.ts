/** Every kind of valve gear. To add one: a file beside this one and a line here. */
import { camSpools } from './cam-spools.ts';
import { flatSlideValve } from './flat-slide-valve.ts';
import { oscillatingCylinder } from './oscillating-cylinder.ts';
import { pistonLiftedValve } from './piston-lifted-valve.ts';
import { pistonValve } from './piston-valve.ts';
import { rotaryDisc } from './rotary-disc.ts';
import type { ValveGearFamily } from './valve-gear.ts';

export const valveGears: ValveGearFamily = {
  name: 'valve gear',
  kinds: [rotaryDisc, camSpools, flatSlideValve, pistonValve, oscillatingCylinder, pistonLiftedValve],
};
