/**
 * Readings of a bench test from the CSV file that a sheet names. Each header is the name of a column and its unit,
 * "pressure_bar_gauge"; any unit of the dimension will do, the columns may stand in any order, and every cell is a plain
 * number.
 */
import type { ReadingColumn, Readings, ReadingsParameter } from '../kinds/parameter.ts';
import { formatRange } from '../quantity/format.ts';
import { readNumber } from '../quantity/number.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { pathBeside } from './attachments.ts';
import { readCsv, type Cell, type CsvRow } from './csv-rows.ts';
import { expectation, readingsHeader } from './expectation.ts';
import { nearest } from './nearest.ts';
import { quoted } from './problem.ts';
import { within, type Atmosphere } from './read-leaf.ts';
import { note, type Place, type Sheet } from './sheet.ts';
import type { TableFault } from './table-columns.ts';

interface Outcome {
  readonly values?: Readings;
  readonly faults: readonly TableFault[];
}

/** Reads the file called `name`; what is wrong in it is noted with its own file, line and column. */
export function readReadings(
  sheet: Sheet,
  parameter: ReadingsParameter,
  place: Place,
  name: string,
): Readings | undefined {
  const attachment = sheet.attachments(name);
  if (!attachment.ok) {
    const received = `${quoted(name)} (${attachment.reason})`;
    note(sheet, place, { expected: expectation(parameter), received });
    return undefined;
  }
  const { values, faults } = readingsFrom(attachment.text, name, parameter, sheet.atmosphere);
  const file = pathBeside(sheet.source.file, name);
  for (const { header, ...fault } of faults)
    sheet.problems.push({ file, path: header === undefined ? [] : [header], ...fault });
  return values;
}

function readingsFrom(
  text: string,
  file: string,
  parameter: ReadingsParameter,
  atmosphere: Atmosphere,
): Outcome {
  const csv = readCsv(text);
  if (!csv.ok) return { faults: [csv.fault] };
  const [first, ...rows] = csv.rows;
  const header = readHeader(first, parameter, atmosphere);
  if (header.faults.length > 0) return { faults: header.faults };
  const form = formFaults(rows, header.columns.length, parameter);
  if (form.length > 0) return { faults: form };
  const read = header.columns.map((column, i) => readColumn(rows, i, column));
  const faults = [
    ...read.flatMap((own) => own.faults),
    ...orderFaults(rows, header.columns, read, parameter),
  ];
  const columns = Object.fromEntries(header.columns.map(({ name }, i) => [name, read[i]?.values ?? []]));
  return faults.length > 0 ? { faults } : { values: { file, columns }, faults };
}

interface Heading {
  readonly name: string;
  readonly header: string;
  readonly unit: string;
  readonly column: ReadingColumn;
  readonly toSi: (value: number) => number;
}

interface Header {
  readonly columns: readonly Heading[];
  readonly faults: readonly TableFault[];
}

function readHeader(row: CsvRow | undefined, parameter: ReadingsParameter, atmosphere: Atmosphere): Header {
  const expected = `a header such as ${quoted(readingsHeader(parameter))}`;
  const refused = (fault: Pick<TableFault, 'received' | 'hint'>): Header => ({
    columns: [],
    faults: [{ line: row?.line ?? 1, column: 1, expected, ...fault }],
  });
  if (row === undefined) return refused({ received: 'nothing' });
  if (row.cells.some(({ text }) => text.includes(';')))
    return refused({
      received: 'columns separated by ";"',
      hint: 'Save the file with commas between the columns and points in the numbers.',
    });
  if (row.cells.every(({ text }) => readNumber(text, '').ok))
    return refused({ received: 'numbers', hint: 'Name each column and its unit in the first line.' });
  const faults: TableFault[] = [];
  const columns: Heading[] = [];
  for (const cell of row.cells) {
    const heading = headingOf(cell, parameter, atmosphere);
    const twice = columns.some(({ name }) => heading.ok && name === heading.heading.name);
    if (!heading.ok) faults.push({ line: row.line, column: cell.column, ...heading.fault });
    else if (twice)
      faults.push({
        line: row.line,
        column: cell.column,
        expected: 'each column once',
        received: quoted(cell.text),
      });
    else columns.push(heading.heading);
  }
  const missing = Object.entries(parameter.columns).filter(
    ([name]) => !columns.some((own) => own.name === name),
  );
  const end = row.cells.at(-1);
  if (faults.length === 0)
    for (const [, { example }] of missing)
      faults.push({
        line: row.line,
        column: (end?.column ?? 1) + (end?.text.length ?? 0),
        expected: `a column ${quoted(example)} too`,
        received: 'none',
      });
  return { columns, faults };
}

type HeadingReading =
  | { readonly ok: true; readonly heading: Heading }
  | { readonly ok: false; readonly fault: Pick<TableFault, 'expected' | 'received' | 'hint'> };

/** "pressure_bar_gauge" is the column called "pressure" in "bar gauge". */
function headingOf(
  { text }: Cell,
  { columns, optionalColumns }: ReadingsParameter,
  atmosphere: Atmosphere,
): HeadingReading {
  const known: Readonly<Record<string, ReadingColumn>> = { ...columns, ...optionalColumns };
  const names = Object.keys(known);
  const name = names
    .filter((own) => text === own || text.startsWith(`${own}_`))
    .reduce((longest, own) => (own.length > longest.length ? own : longest), '');
  const column = known[name];
  const examples = Object.values(known).map(({ example }) => example);
  if (column === undefined) {
    const meant = nearest(text, examples);
    return {
      ok: false,
      fault: {
        expected: `a column with its unit: ${examples.join(', ')}`,
        received: quoted(text),
        ...(meant === undefined ? {} : { hint: `Did you mean ${quoted(meant)}?` }),
      },
    };
  }
  const unit = text.slice(name.length + 1).replaceAll('_', ' ');
  const toSi = conversion(unit, column, atmosphere);
  if (typeof toSi === 'function') return { ok: true, heading: { name, header: text, unit, column, toSi } };
  const hint = `Say the unit in the header, such as ${quoted(column.example)}.${toSi.hint}`;
  return {
    ok: false,
    fault: { expected: `${quoted(name)} with its unit`, received: quoted(text) + toSi.reason, hint },
  };
}

interface NoConversion {
  /** In brackets, or empty. */
  readonly reason: string;
  readonly hint: string;
}

/** From a number in that unit to SI: every unit here is a factor and perhaps an offset, so two points tell. */
function conversion(
  unit: string,
  { dimension }: ReadingColumn,
  atmosphere: Atmosphere,
): ((value: number) => number) | NoConversion {
  if (unit === '') return { reason: ' (no unit)', hint: '' };
  const [one, two] = [1, 2].map((value) => parseQuantity(`${value} ${unit}`, dimension));
  if (one?.ok !== true || two?.ok !== true) {
    const refusal = one?.ok === false ? one : undefined;
    return { reason: refusal?.reason === undefined ? '' : ` (${refusal.reason})`, hint: '' };
  }
  if (one.reference === 'gauge' && atmosphere === undefined)
    return { reason: ' (gauge)', hint: ' Give absolute pressures.' };
  const offset = one.reference === 'gauge' ? (atmosphere ?? 0) : 0;
  const slope = two.value - one.value;
  return (value) => one.value + (value - 1) * slope + offset;
}

function formFaults(
  rows: readonly CsvRow[],
  width: number,
  { leastRows, mostRows }: ReadingsParameter,
): TableFault[] {
  if (rows.length < leastRows || rows.length > mostRows)
    return [
      {
        line: rows[mostRows]?.line ?? rows.at(-1)?.line ?? 1,
        column: 1,
        expected: `from ${leastRows} to ${mostRows} rows of readings`,
        received: `${rows.length}`,
      },
    ];
  return rows
    .filter(({ cells }) => cells.length !== width)
    .map(({ line, cells }) => ({
      line,
      column: 1,
      expected: `${width} numbers, one for each column of the header`,
      received: `${cells.length}`,
    }));
}

interface ColumnReading {
  readonly values: readonly number[];
  readonly faults: readonly TableFault[];
}

function readColumn(rows: readonly CsvRow[], index: number, heading: Heading): ColumnReading {
  const faults: TableFault[] = [];
  const { dimension, min, max } = heading.column;
  const values = rows.map(({ line, cells }) => {
    const { text, column } = cells[index] ?? { text: '', column: 1 };
    const reading = readCell(text, heading);
    if (reading.ok) return reading.value;
    faults.push({
      line,
      column,
      header: heading.header,
      expected: `a plain number of ${heading.unit}, ${formatRange(min, max, dimension)}`,
      received: (text === '' ? 'nothing' : quoted(text)) + reading.reason,
      ...(text.includes(',') ? { hint: 'Write decimals with a point.' } : {}),
    });
    return NaN;
  });
  return { values, faults };
}

type CellReading =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string };

function readCell(text: string, { toSi, column }: Heading): CellReading {
  if (text === '') return { ok: false, reason: '' };
  const number = readNumber(text, '0');
  if (!number.ok) return { ok: false, reason: ` (${number.reason})` };
  if (number.rest !== '')
    return { ok: false, reason: ' (more than a plain number; the unit stands in the header)' };
  const inRange = within(toSi(number.value), column);
  return inRange.ok ? inRange : { ok: false, reason: ` (${inRange.reason})` };
}

function orderFaults(
  rows: readonly CsvRow[],
  columns: readonly Heading[],
  read: readonly ColumnReading[],
  { ascending }: ReadingsParameter,
): TableFault[] {
  const index = columns.findIndex(({ name }) => name === ascending);
  const values = read[index]?.values ?? [];
  return rows.slice(1).flatMap(({ line, cells }, i) => {
    if (!((values[i + 1] ?? NaN) <= (values[i] ?? NaN))) return [];
    const cell = cells[index];
    return [
      {
        line,
        column: cell?.column ?? 1,
        header: columns[index]?.header ?? '',
        expected: `more than the ${rows[i]?.cells[index]?.text ?? ''} of the row before`,
        received: quoted(cell?.text ?? ''),
      },
    ];
  });
}
