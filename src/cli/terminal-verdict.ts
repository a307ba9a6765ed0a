/** A result as text for the terminal: the verdict first, then a small table, then what to mind. */
import { styleText } from 'node:util';
import { keyFigures, verdictOf, type RunResult, type UnitSystem } from '../index.ts';
import { columns, wrapped } from './columns.ts';
import { plain, WIDTH } from './plain.ts';
import { evenly, spark } from './spark.ts';

const SPARK_WIDTH = 48;

export function terminalVerdict(result: RunResult, units: UnitSystem): string {
  const verdict = verdictOf(result, units);
  const figures = [...keyFigures(result, units), ...sparks(result)];
  const runs = result.outcome.kind === 'settled';
  const paragraphs = [
    styleText('bold', plain(result.title)),
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
