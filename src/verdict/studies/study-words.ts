/** The answer of a study as words: what a terminal prints and a page shows. */

/** An answer in words, with the figures that belong beside it. */
export interface StudyWords {
  /** One or two sentences. */
  readonly headline: string;
  /** Whether there is an answer to speak of. */
  readonly good: boolean;
  readonly statements: readonly string[];
  /** Rows of label and value. */
  readonly figures: readonly (readonly [label: string, value: string])[];
}
