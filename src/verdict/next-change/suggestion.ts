/** A change worth trying, and how large the loss is that it goes after. */
import type { RunResult, SettledCycle } from '../../run/result.ts';

export interface Suggestion {
  /**
   * The loss as a share of what there was: of the air, of the pressure above the atmosphere, of the work. Shares of
   * different things are compared as they stand; that orders suggestions, it promises nothing.
   */
  readonly share: number;
  readonly text: string;
  /** What the change can bring at most, all else as it was; a whole sentence. */
  readonly effect?: string;
}

/** Undefined when the result gives no reason for this change. */
export type SuggestionRule = (cycle: SettledCycle, result: RunResult) => Suggestion | undefined;
