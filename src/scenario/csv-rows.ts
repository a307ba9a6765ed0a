/** The rows of a CSV file (RFC 4180), each cell with its place in the text. */
import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import type { Finding } from './source-limits.ts';

export interface Cell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

export interface CsvRow {
  /** Number of its line, from one. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

/** Something wrong with the file as a whole or on one line. */
export type CsvFault = Omit<Finding, 'offset'> & Pick<Cell, 'line' | 'column'>;

export type CsvReading =
  { readonly ok: true; readonly rows: readonly CsvRow[] } | { readonly ok: false; readonly fault: CsvFault };

const mostCharacters = 1_000_000;
const longestLine = 1000;
const lineEnd = /\r\n|\n|\r/u;

export function readCsv(textWithMark: string): CsvReading {
  const text = textWithMark.replace(/^\uFEFF/u, '');
  if (text.length > mostCharacters)
    return refused(1, `at most ${mostCharacters / 1e6} million characters`, `${text.length} characters`);
  try {
    const records = parse(text, {
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      info: true,
      max_record_size: longestLine,
    });
    const lines = text.split(lineEnd);
    return { ok: true, rows: records.map(({ record, info }) => rowOf(record, info.lines, lines)) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return faultOf(error, text);
  }
}

const refused = (line: number, expected: string, received: string): CsvReading => ({
  ok: false,
  fault: { line, column: 1, expected, received },
});

function faultOf({ code, message, lines }: CsvError, text: string): CsvReading {
  if (code === 'CSV_MAX_RECORD_SIZE')
    return refused(lines ?? 1, `rows of at most ${longestLine} characters`, 'a longer one');
  if (code !== 'CSV_QUOTE_NOT_CLOSED')
    return refused(lines ?? 1, 'numbers with commas between', `a slip in its form (${message})`);
  // It swallows all that follows; the parser only notices at the end.
  const opened = text.slice(0, text.lastIndexOf('"')).split(lineEnd).length;
  return refused(opened, 'a closing quotation mark', 'none');
}

function rowOf(record: readonly string[], line: number, lines: readonly string[]): CsvRow {
  const written = lines[line - 1] ?? '';
  let start = 0;
  const cells = record.map((text): Cell => {
    const blank = /^\s*/u.exec(written.slice(start))?.[0].length ?? 0;
    const column = start + blank + 1;
    // Cells of numbers stand without quotes; behind a comma in quotes the column is only a guess.
    const comma = written.indexOf(',', start);
    start = comma < 0 ? written.length : comma + 1;
    return { text, line, column };
  });
  return { line, cells };
}
