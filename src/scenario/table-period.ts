/** A table covers one whole period: ascending from its beginning to its end, without gaps, and back where it began. */
import type { TableParameter } from '../kinds/parameter.ts';
import { formatQuantity } from '../quantity/format.ts';
import type { Cell } from './csv-rows.ts';
import { quoted } from './problem.ts';
import type { Column, TableFault } from './table-columns.ts';

/** Of the period, or of a value: what rounding in a file leaves. */
const SAME = 1e-6;

export function periodFaults(
  argument: Column,
  description: TableParameter['argument'],
  columns: readonly Column[],
): TableFault[] {
  const { cells, values } = argument;
  const [first, last] = [cells[0], cells.at(-1)];
  const { header } = argument;
  if (first === undefined || last === undefined)
    return [{ line: 1, column: 1, header, expected: 'rows of numbers', received: 'none' }];
  const { min, max, dimension } = description;
  const near = (value: number | undefined, end: number): boolean =>
    Math.abs((value ?? NaN) - end) <= SAME * (max - min);
  const atCell = (cell: Cell, expected: string): TableFault => ({
    ...placeOf(cell),
    header,
    expected,
    received: quoted(cell.text),
  });
  const ends = [
    ...(near(values[0], min) ? [] : [atCell(first, `${formatQuantity(min, dimension)} in the first row`)]),
    ...(near(values.at(-1), max) ? [] : [atCell(last, `${formatQuantity(max, dimension)} in the last row`)]),
  ];
  const faults = [...stepFaults(argument, description), ...ends];
  return faults.length > 0 ? faults : columns.flatMap(closingFault);
}

const placeOf = ({ line, column }: Cell): Pick<Cell, 'line' | 'column'> => ({ line, column });

function stepFaults(
  { header, values, cells }: Column,
  { largestStep, dimension }: TableParameter['argument'],
): TableFault[] {
  return cells.slice(1).flatMap((cell, i) => {
    const [before, here] = [values[i] ?? NaN, values[i + 1] ?? NaN];
    const fault = { ...placeOf(cell), header, received: quoted(cell.text) };
    const above = cells[i]?.text ?? '';
    if (here <= before) return [{ ...fault, expected: `more than the ${above} of the row before` }];
    if (here - before <= largestStep * (1 + SAME)) return [];
    const step = formatQuantity(largestStep, dimension);
    const hint = 'Rows seem to be missing; where nothing changes, repeat the values.';
    return [{ ...fault, expected: `at most ${step} from the row before, ${above}`, hint }];
  });
}

/** The last row is the first one again. */
function closingFault({ header, values, cells }: Column): TableFault[] {
  const [first = NaN, last = NaN] = [values[0], values.at(-1)];
  const cell = cells.at(-1);
  if (cell === undefined || Math.abs(last - first) <= SAME * Math.max(Math.abs(first), Math.abs(last)))
    return [];
  const expected = `the value of the first row again, ${cells[0]?.text ?? ''}`;
  return [{ ...placeOf(cell), header, expected, received: quoted(cell.text) }];
}
