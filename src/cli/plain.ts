/** What a terminal shows: how wide, and texts from files before they reach it. */

/** Columns of text: what is easy to read, or what there is. */
export const WIDTH = Math.min(96, process.stdout.columns || 96);

const REPLACEMENT = '\uFFFD';

/** Control characters in a title could move the cursor or repaint the screen, others turn the text round. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, REPLACEMENT);

const ESCAPE = String.fromCharCode(27);

/** Line ends, and the few styles we write in. */
const ours = new RegExp(`(\\n|${ESCAPE}\\[(?:1|22|32|33|39)m)`, 'u');

/** The same for whole paragraphs of ours, whatever they quote: the last gate before the terminal. */
export const plainLines = (text: string): string =>
  text
    .split(ours)
    .map((piece, i) => (i % 2 === 1 ? piece : plain(piece)))
    .join('');
