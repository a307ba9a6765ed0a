/** What a terminal shows: how wide, and texts from files before they reach it. */

/** Columns of text: what is easy to read, or what there is. */
export const WIDTH = Math.min(96, process.stdout.columns || 96);

/** Control characters in a title could move the cursor or repaint the screen. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');
