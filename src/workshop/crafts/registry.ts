/** Every valve gear that the workshop has drawings for. To add one: a file beside this one and a line here. */
import type { Craft } from './craft.ts';
import { camSpoolsCraft } from './cam-spools.ts';
import { flatSlideValveCraft } from './flat-slide-valve.ts';
import { oscillatingCylinderCraft } from './oscillating-cylinder.ts';
import { rotaryDiscCraft } from './rotary-disc.ts';

export const crafts: readonly Craft[] = [
  camSpoolsCraft,
  rotaryDiscCraft,
  flatSlideValveCraft,
  oscillatingCylinderCraft,
];
