/** Columns to CSV by RFC 4180: CRLF, the unit in every header, six significant digits, no text that acts as a formula. */
import { stringify } from 'csv-stringify/browser/esm/sync';

export interface Column {
  readonly header: string;
  /** SI values, one per row. */
  readonly values: ArrayLike<number>;
  /** From SI to the unit of the header. */
  readonly convert: (value: number) => number;
}

const DIGITS = 6;

export function csvText(columns: readonly Column[]): string {
  const rows = Array.from({ length: columns[0]?.values.length ?? 0 }, (_, row) =>
    columns.map(({ values, convert }) => cell(convert(values[row] ?? NaN))),
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
