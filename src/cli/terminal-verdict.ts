/** A result as text for the terminal: the verdict first, then a small table, then what to mind. */
import { styleText } from 'node:util';
import {
  keyFigures,
  verdictOf,
  type Caution,
  type KeyFigure,
  type RunResult,
  type UnitSystem,
} from '../index.ts';
import { columns, wrapped } from './columns.ts';
import { plain, WIDTH } from './plain.ts';
import { evenly, spark } from './spark.ts';

const SPARK_WIDTH = 48;

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

export function terminalText(told: Told): string {
  const { title, good, headline, figures, statements, nextChange, cautions } = told;
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

export const terminalVerdict = (result: RunResult, units: UnitSystem): string =>
  terminalText({
    title: result.title,
    good: result.outcome.kind === 'settled',
    figures: [...keyFigures(result, units), ...sparks(result)],
    ...verdictOf(result, units),
  });

/** Two small pictures: how it got there, and what the air does in a turn. */
function sparks({ trace, settled }: RunResult): [string, string][] {
  const rows: [string, string][] = [];
  if (trace.time.length > 1)
    rows.push(['speed from rest', spark(evenly(trace.time, trace.speed, SPARK_WIDTH))]);
  if (settled !== undefined) {
    const [{ pressure }] = settled.profile.ends;
    rows.push(['pressure in a turn', spark(evenly(settled.profile.crankAngle, pressure, SPARK_WIDTH))]);
  }
  return rows;
}
