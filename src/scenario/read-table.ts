/** A table from the file that a scenario names: its header, its numbers, and that they cover one whole period. */
import type { Table, TableParameter } from '../kinds/parameter.ts';
import { pathBeside } from './attachments.ts';
import { readCsv, type CsvRow } from './csv-rows.ts';
import { expectation, tableHeaders } from './expectation.ts';
import { quoted } from './problem.ts';
import { note, type Place, type Sheet } from './sheet.ts';
import { headerFaults, readColumn, rowFaults, type TableFault } from './table-columns.ts';
import { periodFaults } from './table-period.ts';

type TableReading =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly faults: readonly TableFault[] };

/** Reads the file called `name`; what is wrong in it is noted with its own file, line and column. */
export function readTable(
  sheet: Sheet,
  parameter: TableParameter,
  place: Place,
  name: string,
): Table | undefined {
  const attachment = sheet.attachments(name);
  if (!attachment.ok) {
    const received = `${quoted(name)} (${attachment.reason})`;
    note(sheet, place, { expected: expectation(parameter), received });
    return undefined;
  }
  const reading = tableFrom(attachment.text, name, parameter);
  if (reading.ok) return reading.table;
  const file = pathBeside(sheet.source.file, name);
  for (const { header, ...fault } of reading.faults)
    sheet.problems.push({ file, path: header === undefined ? [] : [header], ...fault });
  return undefined;
}

function tableFrom(text: string, name: string, parameter: TableParameter): TableReading {
  const csv = readCsv(text);
  if (!csv.ok) return { ok: false, faults: [csv.fault] };
  const headers = tableHeaders(parameter);
  const [first, ...rows] = csv.rows;
  const ofHeader = headerFaults(first, headers);
  const ofForm = ofHeader.length > 0 ? ofHeader : rowFaults(rows, headers, parameter);
  return ofForm.length > 0 ? { ok: false, faults: ofForm } : numbersFrom(rows, name, parameter);
}

function numbersFrom(rows: readonly CsvRow[], name: string, parameter: TableParameter): TableReading {
  const headers = tableHeaders(parameter);
  const descriptions = [parameter.argument, ...Object.values(parameter.columns)];
  const read = descriptions.map((own, i) => readColumn(rows, i, headers[i] ?? '', own));
  const ofNumbers = read.flatMap(({ faults }) => faults);
  const [argument, ...columns] = read.map(({ column }) => column);
  if (ofNumbers.length > 0 || argument === undefined) return { ok: false, faults: ofNumbers };
  const ofPeriod = periodFaults(argument, parameter.argument, columns);
  if (ofPeriod.length > 0) return { ok: false, faults: ofPeriod };
  const named = Object.keys(parameter.columns).map((key, i) => [key, columns[i]?.values ?? []]);
  const table = {
    file: name,
    argument: argument.values,
    columns: Object.fromEntries(named) as Table['columns'],
  };
  return { ok: true, table };
}
