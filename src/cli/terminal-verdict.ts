/** A result as text for the terminal: the verdict first, then a small table, then what to mind. */
import { styleText } from 'node:util';
import { keyFigures, verdictOf, type Caution, type KeyFigure, type RunResult } from '../index.ts';
import { columns, wrapped } from './columns.ts';

const WIDTH = 96;

/** Control characters in a title could move the cursor or repaint the screen. */
const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, '\uFFFD');

/** What is told, in the order it is told. */
interface Told {
  readonly title: string;
  readonly good: boolean;
  readonly headline: string;
  readonly figures: readonly KeyFigure[];
  readonly statements: readonly string[];
  readonly nextChange?: string;
  readonly cautions: readonly Caution[];
}

export function terminalText({
  title,
  good,
  headline,
  figures,
  statements,
  nextChange,
  cautions,
}: Told): string {
  const listed = (sentences: readonly string[]): string =>
    sentences.map((sentence) => wrapped(sentence, WIDTH, '- ', '  ')).join('\n');
  const paragraphs = [
    styleText('bold', plain(title)),
    styleText(good ? 'green' : 'yellow', wrapped(headline, WIDTH)),
    figures.length === 0 ? '' : columns(figures),
    listed(statements),
    nextChange === undefined ? '' : `${styleText('bold', 'Next')}\n${wrapped(nextChange, WIDTH, '  ', '  ')}`,
    cautions.length === 0
      ? ''
      : `${styleText('bold', 'Mind')}\n${listed(cautions.map(({ topic, text }) => `${topic}: ${text}`))}`,
  ];
  return paragraphs.filter((paragraph) => paragraph !== '').join('\n\n');
}

export const terminalVerdict = (result: RunResult): string =>
  terminalText({
    title: result.title,
    good: result.outcome.kind === 'settled',
    figures: keyFigures(result),
    ...verdictOf(result),
  });
