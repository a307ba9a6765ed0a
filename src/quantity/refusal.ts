/** Why a text could not be read as a value, in words for the person who wrote it. */
export interface Refusal {
  readonly ok: false;
  /** What the text is instead: "no unit", "a mass". */
  readonly reason: string;
  /** A whole sentence that says what to write. */
  readonly hint: string;
}

export const refusal = (reason: string, hint: string): Refusal => ({ ok: false, reason, hint });

export const write = (...texts: readonly string[]): string =>
  `Write ${texts.map((text) => `"${text}"`).join(' or ')}.`;
