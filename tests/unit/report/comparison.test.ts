import { describe, expect, it } from 'vitest';
import type { Comparison } from '../../../src/report/comparison/comparison.ts';
import { comparedTurnsCsv, comparisonCsv } from '../../../src/report/comparison/comparison-csv.ts';
import { comparisonHtml } from '../../../src/report/comparison/comparison-html.ts';
import { figureRows } from '../../../src/report/comparison/compared-figures.ts';
import { doubleActingResult, noStartResult, settledResult } from './synthetic-result.ts';

const assets = { script: { text: 'draw();', sha256: 'SCRIPT' }, style: { text: 'p{}', sha256: 'STYLE' } };
const hostile = '<script>alert(1)</script>';

const slower = { ...settledResult.settled!, speed: 0.5 * settledResult.settled!.speed };
const comparison: Comparison = {
  runs: [
    { name: 'first', result: settledResult },
    {
      name: 'second',
      result: { ...settledResult, settled: { ...slower, airFlowAnr: 3 * slower.airFlowAnr } },
    },
    { name: 'third', result: noStartResult },
  ],
  differences: [{ key: 'load.torque', values: ['1 N m', '2 N m', undefined] }],
};
const page = (own: Comparison): string => comparisonHtml(own, assets);

describe('the page', () => {
  const text = page(comparison);

  it('says first how the others do against the first, and what was changed', () => {
    expect(text.replaceAll('\u00a0', ' ')).toContain(
      'B runs 50 % slower than A on 3.0 times the air. Not running: C.',
    );
    expect(text).toMatch(/load\.torque<\/th>\s*<td>1 N m<\/td><td>2 N m<\/td><td>left out<\/td>/u);
  });

  it('has every chart that it has a place for, with lines as long as their axis', () => {
    const json = /id="report-data">(.*?)<\/script>/u.exec(text)![1]!;
    const { charts } = JSON.parse(json) as {
      charts: { id: string; x: { values: unknown[] }; lines: { values: unknown[] }[] }[];
    };
    expect(charts.map(({ id }) => id)).toEqual(
      [...text.matchAll(/data-chart="([^"]+)"/gu)].map(([, id]) => id),
    );
    expect(charts.map(({ lines }) => lines.length)).toEqual([2, 2, 3]);
    for (const { x, lines } of charts)
      for (const { values } of lines) expect(values).toHaveLength(x.values.length);
  });

  it('shows no number that is none and asks for nothing outside', () => {
    expect(text).not.toMatch(/NaN|Infinity|undefined|not known/u);
    expect(text).not.toMatch(/\b(?:src|href|action)=|https?:/u);
  });

  it('keeps hostile names and values inert', () => {
    const runs = comparison.runs.map((run) => ({ ...run, name: hostile }));
    const text = page({ runs, differences: [{ key: hostile, values: [hostile, undefined, undefined] }] });
    expect(text.match(/<script/gu)).toHaveLength(2);
  });

  it('can do without any engine that runs, and without differences', () => {
    const still = { name: 'still', result: noStartResult };
    const text = page({ runs: [still, still], differences: [] });
    expect(text).toContain('None of them runs.');
    expect(text).toContain('The scenarios say the same');
    expect(text).not.toContain('id="indicators"');
  });

  it('folds a long list of differences away', () => {
    const differences = Array.from({ length: 13 }, (_, i) => ({ key: `k${i}`, values: ['1', '2', '3'] }));
    expect(page({ ...comparison, differences })).toContain(
      '<summary>13 keys that are not given alike</summary>',
    );
  });
});

it('the table has a row for each run, empty where an engine does not run, and no formulas', () => {
  const [head = '', ...rows] = comparisonCsv({
    ...comparison,
    differences: [{ key: 'x', values: ['=1', '', '-'] }],
  })
    .trimEnd()
    .split('\r\n');
  expect(head.split(',').slice(0, 4)).toEqual(['run', 'title', 'outcome', 'speed_rpm']);
  expect(rows).toHaveLength(3);
  expect(rows[2]).toMatch(/,no-start,,,,/u);
  expect(rows[0]).toMatch(/'=1$/u);
});

it('figures of an engine that does not run are dashes', () => {
  const rows = figureRows([
    { name: 'a', result: doubleActingResult },
    { name: 'b', result: noStartResult },
  ]);
  expect(rows[0]).toEqual(['it', 'runs', 'does not start']);
  expect(rows.slice(1).every(([, , cell]) => cell === '–')).toBe(true);
});

it('turns are told degree by degree, by letters, of the engines that run', () => {
  const [head = '', ...rows] = comparedTurnsCsv(comparison)!.trimEnd().split('\r\n');
  expect(
    head
      .split(',')
      .map((column) => column.charAt(0))
      .join(''),
  ).toBe('cAAAABBBB');
  expect(rows).toHaveLength(361);
  expect(comparedTurnsCsv({ runs: [comparison.runs[2]!], differences: [] })).toBeUndefined();
});
