/** Ways in which sizes stray. To add one: a file beside this one and a line here. */
import { fit } from './fit.ts';
import { spread } from './spread.ts';
import type { ToleranceFamily } from './tolerance.ts';

export const tolerances: ToleranceFamily = { name: 'tolerance', kinds: [fit, spread] };
