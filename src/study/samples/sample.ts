/** Contract of the samples: which engines a study looks at, in which order. */
import type { Family } from '../../kinds/kind.ts';
import type { Variation } from '../variations/variation.ts';

export interface Sample {
  readonly count: number;
  /** One value for each variation, of an engine from 0 up to `count`; any engine by itself, in no particular order. */
  readonly point: (engine: number) => readonly string[];
}

export type SampleFamily = Family<readonly Variation[], Sample>;
