/** Columns to CSV by RFC 4180: CRLF, the unit in every header, six significant digits, no text that acts as a formula. */
import { stringify } from 'csv-stringify/browser/esm/sync';

/** Words, one per row. */
export interface TextColumn {
  readonly header: string;
  readonly texts: readonly string[];
}

export interface Column {
  readonly header: string;
  /** SI values, one per row. */
  readonly values: ArrayLike<number>;
  /** From SI to the unit of the header. */
  readonly convert: (value: number) => number;
}

const DIGITS = 6;

/** All columns are as long as the first. */
export function csvText(columns: readonly (Column | TextColumn)[]): string {
  const [first] = columns;
  const length = first === undefined ? 0 : 'texts' in first ? first.texts.length : first.values.length;
  const rows = Array.from({ length }, (_, row) =>
    columns.map((column) =>
      'texts' in column ? (column.texts[row] ?? '') : cell(column.convert(column.values[row] ?? NaN)),
    ),
  );
  return stringify([columns.map(({ header }) => header), ...rows], {
    record_delimiter: 'windows',
    escape_formulas: true,
  });
}

/** An empty cell where there is no number. */
function cell(value: number): number | string {
  return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) + 0 : '';
}

/** A name as part of a header: small letters, digits and underscores only. */
export function slug(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '_')
    .replace(/^_+|_+$/gu, '');
}

/** Headers that occur twice get a number. */
export function distinct(headers: readonly string[]): string[] {
  return headers.map((header, i) => {
    const before = headers.slice(0, i).filter((other) => other === header).length;
    return before === 0 ? header : `${header}_${before + 1}`;
  });
}
