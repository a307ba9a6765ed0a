/** Ways to say how a value varies. To add one: a file beside this one and a line here. */
import { range } from './range.ts';
import { values } from './values.ts';
import type { VariationFamily } from './variation.ts';

export const variations: VariationFamily = { name: 'variation', kinds: [range, values] };
