/** Every remedy, the easiest to carry out first. To add one: a rule in a file here and a line below. */
import { closerFit } from './closer-fit.ts';
import { heavierFlywheel } from './heavier-flywheel.ts';
import { laterCutOff } from './later-cut-off.ts';
import { lessDrag } from './less-drag.ts';
import { lighterLoad } from './lighter-load.ts';
import { longerLook } from './longer-look.ts';
import { morePressure } from './more-pressure.ts';
import { pushByHand } from './push-by-hand.ts';
import type { RemedyRule } from './remedy.ts';
import { startingPosition } from './starting-position.ts';
import { widerHose } from './wider-hose.ts';

/** A leak comes before pressure and hose: more of either would only feed it. */
export const remedyRules: readonly RemedyRule[] = [
  longerLook,
  startingPosition,
  pushByHand,
  closerFit,
  morePressure,
  widerHose,
  lighterLoad,
  lessDrag,
  laterCutOff,
  heavierFlywheel,
];
