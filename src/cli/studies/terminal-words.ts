/** The answer of a study as text for the terminal. */
import { styleText } from 'node:util';
import type { StudyWords } from '../../index.ts';
import { columns, wrapped } from '../columns.ts';
import { plain, WIDTH } from '../plain.ts';

export function terminalWords(title: string, { headline, good, figures, statements }: StudyWords): string {
  const paragraphs = [
    styleText('bold', plain(title)),
    styleText(good ? 'green' : 'yellow', wrapped(plain(headline), WIDTH)),
    figures.length === 0 ? '' : columns(figures),
    statements.map((sentence) => wrapped(plain(sentence), WIDTH, '- ', '  ')).join('\n'),
  ];
  return paragraphs.filter((paragraph) => paragraph !== '').join('\n\n');
}
