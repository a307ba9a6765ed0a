/** Header and cells of a table: the columns that were asked for, each a number in its unit and range. */
import type { TableColumn, TableParameter } from '../kinds/parameter.ts';
import { formatNumberRange } from '../quantity/format.ts';
import { readNumber, withoutNoise } from '../quantity/number.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Cell, CsvRow } from './csv-rows.ts';
import { quoted, type Problem } from './problem.ts';
import { within } from './read-leaf.ts';

/** Something wrong at a place of the table's file; `header` is that of the column. */
export type TableFault = Pick<Problem, 'line' | 'column' | 'expected' | 'received' | 'hint'> & {
  readonly header?: string;
};

/** A column that was read: SI, with the cells it came from. */
export interface Column {
  readonly header: string;
  readonly values: readonly number[];
  readonly cells: readonly Cell[];
}

const top = { line: 1, column: 1 };

/** The first row must be exactly the headers. */
export function headerFaults(row: CsvRow | undefined, headers: readonly string[]): TableFault[] {
  const whole = headers.join(',');
  if (row === undefined) return [{ ...top, expected: `the header ${quoted(whole)}`, received: 'nothing' }];
  if (row.cells.some(({ text }) => text.includes(';')))
    return [
      {
        ...top,
        expected: `the header ${quoted(whole)}`,
        received: 'columns separated by ";"',
        hint: 'Save the file with commas between the columns and points in the numbers.',
      },
    ];
  if (row.cells.every(({ text }) => readNumber(text, '').ok))
    return [
      {
        line: row.line,
        column: 1,
        expected: `the header ${quoted(whole)}`,
        received: 'numbers',
        hint: `Write ${quoted(whole)} as the first line.`,
      },
    ];
  return Array.from({ length: Math.max(row.cells.length, headers.length) }).flatMap((_, i) =>
    headerCellFault(row, i, headers[i]),
  );
}

function headerCellFault({ line, cells }: CsvRow, i: number, header: string | undefined): TableFault[] {
  const cell = cells[i];
  if (cell?.text === header) return [];
  return [
    {
      line,
      column: cell?.column ?? (cells.at(-1)?.column ?? 0) + (cells.at(-1)?.text.length ?? 0),
      expected: header === undefined ? 'no further column' : `the header ${quoted(header)}`,
      received: cell === undefined ? 'nothing' : quoted(cell.text),
      ...unitHint(cell?.text, header),
    },
  ];
}

/** A column of the right name in another unit. */
function unitHint(given: string | undefined, header: string | undefined): Pick<TableFault, 'hint'> {
  const [, name, unit] = /^(.*)_([^_]*)$/u.exec(header ?? '') ?? [];
  const isThatName = name !== undefined && (given === name || given?.startsWith(`${name}_`) === true);
  return isThatName ? { hint: `Give the column in ${unit ?? ''} and say so in its header.` } : {};
}

/** As many cells in each row as there are headers, and not too many rows. */
export function rowFaults(
  rows: readonly CsvRow[],
  headers: readonly string[],
  { mostRows }: TableParameter,
): TableFault[] {
  const extra = rows[mostRows];
  if (extra !== undefined)
    return [
      {
        line: extra.line,
        column: 1,
        expected: `at most ${mostRows} rows of numbers`,
        received: `${rows.length}`,
      },
    ];
  return rows
    .filter(({ cells }) => cells.length !== headers.length)
    .map(({ line, cells }) => ({
      line,
      column: 1,
      expected: `${headers.length} numbers`,
      received: `${cells.length}`,
    }));
}

interface ColumnReading {
  readonly column: Column;
  readonly faults: readonly TableFault[];
}

export function readColumn(
  rows: readonly CsvRow[],
  index: number,
  header: string,
  description: TableColumn,
): ColumnReading {
  const cells = rows.flatMap((row) => row.cells.slice(index, index + 1));
  const size = unitSize(description);
  const faults: TableFault[] = [];
  const values = cells.map(({ text, line, column }) => {
    const reading = readCell(text, size, description);
    if (reading.ok) return reading.value;
    const received = (text === '' ? 'nothing' : quoted(text)) + reading.reason;
    faults.push({ line, column, header, expected: expectedCell(description, size), received });
    return NaN;
  });
  return { column: { header, values, cells }, faults };
}

const expectedCell = ({ min, max, unit }: TableColumn, size: number): string =>
  `a number of ${unit} ${formatNumberRange(min / size, max / size)}`;

function unitSize({ unit, dimension }: TableColumn): number {
  const one = parseQuantity(`1 ${unit}`, dimension);
  if (!one.ok) throw new Error(`a table has its ${dimension} in "${unit}"`);
  return one.value;
}

type CellReading =
  | { readonly ok: true; readonly value: number }
  /** Empty, or in brackets. */
  | { readonly ok: false; readonly reason: string };

function readCell(text: string, size: number, description: TableColumn): CellReading {
  if (text === '') return { ok: false, reason: '' };
  const number = readNumber(text, '0');
  if (!number.ok) return { ok: false, reason: ` (${number.reason})` };
  if (number.rest !== '') return { ok: false, reason: ' (more than a plain number)' };
  const inRange = within(withoutNoise(number.value * size), description);
  return inRange.ok ? inRange : { ok: false, reason: ` (${inRange.reason})` };
}
