/** What this project uses of csv-stringify 6.9.0; the package's own types bring in those of Node. */

export interface Options {
  readonly record_delimiter: 'windows';
  /** Puts ' before a text that a spreadsheet would take for a formula. */
  readonly escape_formulas: boolean;
}

export declare function stringify(
  records: readonly (readonly (string | number)[])[],
  options: Options,
): string;
