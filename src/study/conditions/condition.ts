/** Contract of the conditions: what an engine has to do to be of use. */
import type { Family } from '../../kinds/kind.ts';
import type { EngineAnswer, Wanted } from '../engine-answer.ts';

/** What is asked of an engine. */
export interface Condition {
  /**
   * What holds, after "it": "starts unaided from at least 80 % of positions". With a value in it, it is made when it is
   * read, in the units then in force.
   */
  readonly words: string;
  /** What the answer must tell besides the settled turn. */
  readonly needs?: keyof Wanted;
  /**
   * How far the engine is on the good side, as a share of what is asked; negative when it is not. One that does not run
   * is `FAR_OFF`.
   */
  margin(answer: EngineAnswer): number;
}

export const FAR_OFF = -1;

/** However much an engine that runs lacks, it is better than one that does not. */
export const lacking = (margin: number): number => Math.max(0.99 * FAR_OFF, margin);

export type ConditionFamily = Family<null, Condition>;

/** The margin of the condition that is hardest to meet; without any, whether the engine runs. */
export function worstMargin(conditions: readonly Condition[], answer: EngineAnswer): number {
  if (answer.outcome !== 'settled') return FAR_OFF;
  return conditions.reduce((worst, condition) => Math.min(worst, condition.margin(answer)), 1);
}
