/** A result as text for the terminal: the verdict first, then a small table, then what to mind. */
import { styleText } from 'node:util';
import { keyFigures, verdictOf, type RunResult } from '../index.ts';
import { columns, wrapped } from './columns.ts';

const WIDTH = 96;

/** Control characters in a title could move the cursor or repaint the screen. */
export const plainText = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');

export function terminalVerdict(result: RunResult): string {
  const verdict = verdictOf(result);
  const figures = keyFigures(result);
  const runs = result.outcome.kind === 'settled';
  const paragraphs = [
    styleText('bold', plainText(result.title)),
    styleText(runs ? 'green' : 'yellow', wrapped(verdict.headline, WIDTH)),
    figures.length === 0 ? '' : columns(figures),
    verdict.statements.map((sentence) => wrapped(sentence, WIDTH, '- ', '  ')).join('\n'),
    `${styleText('bold', 'Next')}\n${wrapped(verdict.nextChange, WIDTH, '  ', '  ')}`,
    `${styleText('bold', 'Mind')}\n${verdict.cautions
      .map(({ topic, text }) => wrapped(`${topic}: ${text}`, WIDTH, '- ', '  '))
      .join('\n')}`,
  ];
  return paragraphs.filter((paragraph) => paragraph !== '').join('\n\n');
}
