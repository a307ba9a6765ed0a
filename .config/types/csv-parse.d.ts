/** What this project uses of csv-parse 7.0.3; the package's own types bring in those of Node. */

export interface Options {
  readonly record_delimiter: readonly string[];
  /** Rows of unlike lengths are handed over as they are. */
  readonly relax_column_count: true;
  readonly skip_empty_lines: true;
  readonly trim: true;
  /** With each record, where it stands. */
  readonly info: true;
  /** In characters; a longer one is an error. */
  readonly max_record_size: number;
}

export interface RecordWithInfo {
  readonly record: readonly string[];
  /** `lines`: number of the line that the record ends on, from one. */
  readonly info: { readonly lines: number };
}

export declare function parse(text: string, options: Options): RecordWithInfo[];

/** Thrown for text that is no CSV. */
export declare class CsvError extends Error {
  readonly code: string;
  readonly lines?: number;
}
