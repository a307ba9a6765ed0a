/** The figures of compared runs, a row for each run. Units as in the other tables, whatever the page shows. */
import { csvText } from '../csv/table.ts';
import { same } from '../csv/units.ts';
import type { Comparison } from './comparison.ts';
import { comparedFigures } from './compared-figures.ts';

export function comparisonCsv({ runs, differences }: Comparison): string {
  return csvText([
    { header: 'run', texts: runs.map(({ name }) => name) },
    { header: 'title', texts: runs.map(({ result }) => result.title) },
    { header: 'outcome', texts: runs.map(({ result }) => result.outcome.kind) },
    ...comparedFigures.map(({ header, value }) => ({
      header,
      values: runs.map(({ result }) => (result.settled === undefined ? NaN : value(result.settled, result))),
      convert: same,
    })),
    ...differences.map(({ key, values }) => ({
      header: `given ${key}`,
      texts: values.map((value) => value ?? ''),
    })),
  ]);
}
