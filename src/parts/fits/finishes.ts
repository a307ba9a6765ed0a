/**
 * What a way of working can hold when it goes well: its usual tolerance grade.
 *
 * From a chart of best ordinary grades: drilling, rough turning and rough boring IT11; centre-lathe turning and boring,
 * reaming IT8; good turning, honing IT7; grinding IT6; lapping IT5 (Narayana, Kannaiah and Reddy, Machine Drawing,
 * fig. 15.2; numbers seen, book probable). Drawn bar: h9 is the closest class that EN 10278 offers it in
 * (evgroupchina.com, "EN 10278"; seen).
 */
import type { Grade } from './tolerance-grades.ts';

export const boreFinishes: ReadonlyMap<string, Grade> = new Map<string, Grade>([
  ['drilled', '11'],
  ['rough bored', '11'],
  ['bored', '8'],
  ['reamed', '8'],
  ['honed', '7'],
  ['ground', '6'],
  ['lapped', '5'],
]);

export const rodFinishes: ReadonlyMap<string, Grade> = new Map<string, Grade>([
  ['rough turned', '11'],
  ['drawn', '9'],
  ['turned', '8'],
  ['well turned', '7'],
  ['ground', '6'],
  ['lapped', '5'],
]);
