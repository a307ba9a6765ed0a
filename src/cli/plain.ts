/** Texts from files, before they reach a terminal. */

/** Columns of text. */
export const WIDTH = 96;

/** Control characters in a title could move the cursor or repaint the screen. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');
