/** What can hurt. A caution is computed from the result and leaves the last word to local codes and licensed people. */
import type { RunResult } from '../../run/result.ts';

/** From what is good to know to what can kill. */
export type Severity = 'note' | 'caution' | 'danger';

/** Something that can hurt, in whole sentences, and how badly. */
export interface Caution {
  readonly topic: string;
  readonly text: string;
  readonly severity: Severity;
}

/** Undefined when the topic does not arise. */
export type CautionRule = (result: RunResult) => Caution | undefined;
