/** The answer of a study as text for the terminal. */
import { styleText } from 'node:util';
import type { StudyWords } from '../../index.ts';
import { columns, wrapped } from '../columns.ts';

const WIDTH = 96;

/** Control characters in a title could move the cursor or repaint the screen. */
const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');

export function terminalWords(title: string, { headline, good, figures, statements }: StudyWords): string {
  const paragraphs = [
    styleText('bold', plain(title)),
    styleText(good ? 'green' : 'yellow', wrapped(plain(headline), WIDTH)),
    figures.length === 0 ? '' : columns(figures),
    statements.map((sentence) => wrapped(plain(sentence), WIDTH, '- ', '  ')).join('\n'),
  ];
  return paragraphs.filter((paragraph) => paragraph !== '').join('\n\n');
}
