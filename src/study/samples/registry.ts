/** Ways to choose the engines of a study. To add one: a file beside this one and a line here. */
import { grid } from './grid.ts';
import { list } from './list.ts';
import type { SampleFamily } from './sample.ts';
import { spaceFilling } from './space-filling.ts';

export const samples: SampleFamily = { name: 'sample', kinds: [grid, list, spaceFilling] };
