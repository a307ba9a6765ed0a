import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cycleCsv } from '../../../src/report/csv/cycle-csv.ts';
import { csvText, distinct, slug } from '../../../src/report/csv/table.ts';
import { traceCsv } from '../../../src/report/csv/trace-csv.ts';
import type { RunResult } from '../../../src/run/result.ts';
import { doubleActingResult, noStartResult, settledResult } from './synthetic-result.ts';

const readme = readFileSync(new URL('../../../reports/README.md', import.meta.url), 'utf8');

const same = (value: number): number => value;
const rowsOf = (csv: string): string[][] => csv.split('\r\n').map((line) => line.split(','));

/** Column names in the first cells of the table under a heading of reports/README.md. */
function documented(file: string): string[] {
  const [, part = ''] = readme.split(`## Columns of \`${file}\``);
  return [...(part.split('## ')[0] ?? '').matchAll(/^\| `([^`]+)`/gmu)].map(([, name]) => name!);
}

function named(name: string): RunResult {
  const settled = settledResult.settled!;
  return {
    ...settledResult,
    settled: { ...settled, passages: settled.passages.map((p) => ({ ...p, name })) },
  };
}

test('cycle.csv has a row for every crank degree and says nothing but numbers', () => {
  const [head, ...rows] = rowsOf(cycleCsv(settledResult)!);
  expect(rows.pop()).toEqual(['']);
  expect(rows.map(([angle]) => angle)).toEqual(Array.from({ length: 361 }, (_, i) => String(i)));
  for (const row of rows) expect(row).toHaveLength(head!.length);
  expect(rows.flat().every((cell) => /^-?\d+(\.\d+)?(e-?\d+)?$/u.test(cell))).toBe(true);
});

test('values are converted to the unit of their header', () => {
  const [head, ...rows] = rowsOf(cycleCsv(settledResult)!);
  const at180 = Object.fromEntries(head!.map((name, i) => [name, Number(rows[180]![i])]));
  const { profile } = settledResult.settled!;
  const [end] = profile.ends;
  expect(at180['cylinder_pressure_bar_abs']! * 1e5).toBeCloseTo(end.pressure[180]!, -1);
  expect(at180['cylinder_temperature_C']! + 273.15).toBeCloseTo(end.temperature[180]!, 2);
  expect(at180['cylinder_volume_cm3']).toBeCloseTo(settledResult.engine.sweptVolume * 1e6 + 6, 2);
  expect(at180['flow_past_the_piston_g_per_s']! * 1e-3).toBeCloseTo(profile.massFlow[3]![180]!, 9);
  expect((at180['speed_rpm']! / 30) * Math.PI).toBeCloseTo(profile.speed[180]!, 2);
});

test('an engine that has not settled has no cycle, but a start', () => {
  expect(cycleCsv(noStartResult)).toBeUndefined();
  expect(rowsOf(traceCsv(noStartResult))).toHaveLength(1 + 180 + 1);
});

test('the columns are those of reports/README.md, in its order', () => {
  const [cycleHead] = rowsOf(cycleCsv(settledResult)!);
  const flows = cycleHead!.filter((name) => name.startsWith('flow_'));
  expect(flows).toHaveLength(settledResult.settled!.passages.length);
  expect([...cycleHead!.filter((name) => !flows.includes(name)), 'flow_…_g_per_s']).toEqual(
    documented('cycle.csv'),
  );
  expect(rowsOf(traceCsv(settledResult))[0]).toEqual(documented('start-up.csv'));
});

test('several working ends have columns of their own names', () => {
  const [head] = rowsOf(cycleCsv(doubleActingResult)!);
  const ofEnds = head!.filter((name) => name.includes('_end_'));
  const [first, second] = [ofEnds.slice(0, 5), ofEnds.slice(5)];
  expect(first[0]).toBe('cover_end_volume_cm3');
  expect(second).toEqual(first.map((name) => name.replace('cover', 'crank')));
  expect(head!.filter((name) => name.startsWith('cylinder_'))).toEqual([]);
  expect(new Set(head).size).toBe(head!.length);
});

test('the same result gives the same bytes', () => {
  expect(cycleCsv(settledResult)).toBe(cycleCsv({ ...settledResult }));
  expect(traceCsv(settledResult)).toBe(traceCsv({ ...settledResult }));
});

describe('text that could act as a formula', () => {
  test.each(['=HYPERLINK("http://x")', '+1', '-1', '@SUM(A1)', '\t=1', 'a,b\r\n"c"', '＝1'])(
    'the passage "%s" becomes a harmless header',
    (name) => {
      const [head] = rowsOf(cycleCsv(named(name))!);
      for (const cell of head!) expect(cell).toMatch(/^[a-z]\w*$/u);
      expect(new Set(head).size).toBe(head!.length);
    },
  );

  test('a header that were one all the same is quoted away', () => {
    expect(csvText([{ header: '=1+1', values: [1], convert: same }])).toBe("'=1+1\r\n1\r\n");
  });
});

test('six digits, no minus zero, an empty cell where there is no number', () => {
  const values = [1 / 3, 123_456_789, -0, NaN, Infinity, -2.5e-9];
  expect(csvText([{ header: 'x', values, convert: same }])).toBe(
    'x\r\n0.333333\r\n123457000\r\n0\r\n\r\n\r\n-2.5e-9\r\n',
  );
});

test('headers from names', () => {
  expect(slug('  Past the piston – front/back (µ) ')).toBe('past_the_piston_front_back');
  expect(distinct(['a', 'b', 'a', 'a'])).toEqual(['a', 'b', 'a_2', 'a_3']);
});
