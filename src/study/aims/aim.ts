/** Contract of the aims: what the best of many engines is best at. */
import type { Family } from '../../kinds/kind.ts';
import type { EngineAnswer } from '../engine-answer.ts';
import type { MeasureName } from '../measures.ts';

/** A value of the scenario by its path. */
export interface SettingText {
  readonly path: string;
  readonly value: string;
}

export interface Aim {
  /** "the highest speed" */
  readonly words: string;
  /** What is compared, and whether more of it is better or less. */
  readonly measure: MeasureName;
  readonly better: 'more' | 'less';
  /** Values of the scenario that the question itself sets. */
  readonly settings: readonly SettingText[];
}

export type AimFamily = Family<null, Aim>;

/** The higher the better; `undefined` for an engine that has nothing to show. */
export function score({ measure, better }: Aim, { outcome, values }: EngineAnswer): number | undefined {
  const value = outcome === 'settled' ? values[measure] : undefined;
  return value === undefined ? undefined : better === 'more' ? value : -value;
}
