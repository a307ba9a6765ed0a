/**
 * One engine of a study as a line of CSV (RFC 4180) and as a line of JSON. Lines hold no line breaks, so that a file is
 * whole up to its last line end.
 */
import { stringify } from 'csv-stringify/browser/esm/sync';
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { Variation } from '../../study/variations/variation.ts';
import type { SweptEngine } from '../../verdict/studies/sweep-words.ts';
import { measureCells, measureColumns, measureHeaders } from './study-columns.ts';

/** What is varied, as far as columns need to know. */
export type Varied = Pick<Variation, 'paths' | 'unit'>;

/** One engine of a study with its answer. */
export interface StudyRow {
  /** Counted from 1 through the whole study. */
  readonly engine: number;
  /** One text for each thing varied. */
  readonly texts: readonly string[];
  readonly answer: EngineAnswer;
  /** Whether it meets the conditions of the study; left out where there are none. */
  readonly holds: boolean | undefined;
}

/** How every line of a table ends (RFC 4180). */
export const CSV_LINE_END = '\r\n';

type Cells = readonly (string | number | null)[];

/** Many at a time, as each beginning of the writer costs more than a line. */
const lines = (rows: readonly Cells[]): string =>
  stringify(
    rows.map((cells) => cells.map((cell) => cell ?? '')),
    { record_delimiter: 'windows', escape_formulas: true },
  );

/** "valve_gear.admission.closes" in "% of stroke" is "valve_gear.admission.closes_percent_of_stroke". */
function header({ paths, unit }: Varied): string {
  const path = paths[0] ?? '';
  if (unit === undefined || unit === '') return path;
  const name = unit
    .replaceAll('%', 'percent')
    .replaceAll('µ', 'u')
    .replace(/[^A-Za-z0-9]+/gu, '_');
  return `${path}_${name.replace(/^_+|_+$/gu, '')}`;
}

/** The first line of the table of a study. */
export function studyCsvHeader(varied: readonly Varied[]): string {
  return lines([['engine', ...varied.map(header), 'outcome', 'reason', 'holds', ...measureHeaders]]);
}

/** The lines of engines in the table of a study. */
export const studyCsvRows = (varied: readonly Varied[], rows: readonly StudyRow[]): string =>
  lines(rows.map((row) => cellsOf(varied, row)));

function cellsOf(varied: readonly Varied[], { engine, texts, answer, holds }: StudyRow): Cells {
  const own = varied.map(({ unit }, i) =>
    unit === undefined ? oneLine(texts[i] ?? '') : leadingNumber(texts[i] ?? ''),
  );
  const met = holds === undefined ? '' : holds ? 'yes' : 'no';
  return [engine, ...own, answer.outcome, oneLine(answer.reason), met, ...measureCells(answer.values)];
}

/** A text that `unit` was said of begins with a number. */
function leadingNumber(text: string): number | string {
  const number = Number.parseFloat(text.replace('−', '-'));
  return Number.isFinite(number) ? number : oneLine(text);
}

/** Most texts are one already, and are left as they are: a copy of each for every row is much in long studies. */
const oneLine = (text: string): string =>
  /[^\S ]| {2}|^ | $/u.test(text) ? text.replace(/\s+/gu, ' ').trim() : text;

/** The line of one engine in the file of JSON lines. */
export function studyJsonLine(varied: readonly Varied[], { engine, texts, answer, holds }: StudyRow): string {
  const settings = Object.fromEntries(
    varied.map(({ paths }, i) => [paths[0] ?? '', oneLine(texts[i] ?? '')]),
  );
  const cells = measureCells(answer.values);
  const values = Object.fromEntries(measureHeaders.map((name, i) => [name, cells[i] ?? null]));
  const row = {
    engine,
    settings,
    outcome: answer.outcome,
    reason: oneLine(answer.reason),
    holds: holds ?? null,
    ...values,
  };
  return `${JSON.stringify(row)}\n`;
}

const columns = Object.entries(measureColumns);

/** Reads back what `studyJsonLine` wrote. */
export function sweptEngine(line: string): SweptEngine {
  const row = JSON.parse(line) as WrittenRow;
  const values = columns.flatMap(([name, { header, toSi }]) => {
    const value = row[header];
    return typeof value === 'number' ? [[name, toSi(value)] as const] : [];
  });
  return {
    texts: Object.values(row.settings),
    outcome: row.outcome,
    reason: row.reason,
    holds: row.holds ?? undefined,
    values: Object.fromEntries(values),
  };
}

type WrittenRow = Readonly<Record<string, unknown>> & {
  readonly settings: Readonly<Record<string, string>>;
  readonly outcome: string;
  readonly reason: string;
  readonly holds: boolean | null;
};
