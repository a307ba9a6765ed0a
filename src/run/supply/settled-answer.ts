/** Where minutes of supply get the settled engine from, for one pressure at a time. */
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { Outcome } from '../outcome.ts';
import type { SettledTurn } from '../result.ts';
import { settledRunning } from '../settled-running.ts';

/** The settled engine, as far as the supply asks. */
export interface SettledRun {
  readonly outcome: Outcome;
  readonly settled?: Pick<SettledTurn, 'speed' | 'airMassFlow'>;
}

export type AnswerOf = (spec: EngineSpec) => SettledRun;

export const settledAnswer: AnswerOf = settledRunning;
