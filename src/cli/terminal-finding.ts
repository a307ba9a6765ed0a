/** The finding of a bench test as text for the terminal. */
import { styleText } from 'node:util';
import { estimateRow, type TitledFinding } from '../index.ts';
import { columns, grid, wrapped } from './columns.ts';
import { plain, WIDTH } from './plain.ts';

const bullets = (texts: readonly string[]): string =>
  texts.map((text) => wrapped(text, WIDTH, '- ', '  ')).join('\n');

const titled = (title: string, body: string): string =>
  body === '' ? '' : `${styleText('bold', title)}\n${body}`;

export function terminalFinding({ title, finding }: TitledFinding): string {
  const {
    usable,
    headline,
    estimates,
    warnings,
    statements,
    tables = [],
    scenario,
    next,
    cautions,
  } = finding;
  const rows = estimates.map((own): [string, string] => {
    const [name = '', value = '', low = '', high = ''] = estimateRow(own);
    return [name, `${value}   (${low} to ${high})`];
  });
  const paragraphs = [
    styleText('bold', plain(title)),
    styleText(usable ? 'green' : 'yellow', wrapped(headline, WIDTH)),
    rows.length === 0 ? '' : columns(rows),
    bullets(statements),
    ...tables.map(({ caption, head, rows: body }) => titled(caption, grid([head, ...body], WIDTH))),
    titled('Doubts', bullets(warnings)),
    titled('For the scenario', scenario.replace(/^/gmu, scenario === '' ? '' : '  ')),
    titled('Next', wrapped(next, WIDTH, '  ', '  ')),
    titled('Mind', bullets(cautions.map(({ topic, text }) => `${topic}: ${text}`))),
  ];
  return paragraphs.filter((paragraph) => paragraph !== '').join('\n\n');
}
