/** What can be asked of an engine. To add one: a file beside this one and a line here. */
import { air } from './air.ts';
import type { ConditionFamily } from './condition.ts';
import { camsCanBeCut } from './cams-can-be-cut.ts';
import { lasts } from './lasts.ts';
import { runs } from './runs.ts';
import { speed } from './speed.ts';
import { startsUnaided } from './starts-unaided.ts';
import { withinCompressor } from './within-compressor.ts';

export const conditions: ConditionFamily = {
  name: 'condition',
  kinds: [runs, speed, startsUnaided, withinCompressor, lasts, air, camsCanBeCut],
};
