/** Minutes of supply as words, table and JSON, from timelines of an engine that is a law. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { supplyCsv } from '../../../src/report/csv/supply-csv.ts';
import { supplyJson } from '../../../src/report/summary/supply-json.ts';
import { supplyTimeline, type SupplyTimeline } from '../../../src/run/supply/timeline.ts';
import { supplyVerdict } from '../../../src/verdict/supply-verdict.ts';
import { compressorWith } from '../../support/compressors.ts';
import { answersOf, plainLaw } from '../../support/engine-by-law.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const BAR = 1e5;
const spec = referenceSpec({ supply: { pressure: 4 * BAR } });

/** With a compressor of so many litres of free air a minute; the engine takes 114 at 4 bar. */
function timelineWith(litresPerMinute: number, volume = 0.05): SupplyTimeline {
  const compressor = compressorWith({
    free_air_delivery: litresPerMinute / 60e3,
    receiver_volume: volume,
    cut_in: 6 * BAR,
    cut_out: 8 * BAR,
  });
  const timeline = supplyTimeline(spec, compressor, 7200, answersOf(plainLaw).answer);
  if (!timeline.runs) throw new Error('it must run');
  return timeline;
}

const stopped = supplyTimeline(
  spec,
  timelineWith(300).facts.compressor,
  7200,
  answersOf({ ...plainLaw, stall: 5 * BAR }).answer,
);

const headline = (litresPerMinute: number): string => supplyVerdict(timelineWith(litresPerMinute)).headline;
const topics = (litresPerMinute: number): string[] =>
  supplyVerdict(timelineWith(litresPerMinute)).cautions.map(({ topic }) => topic);

describe('the verdict on minutes of supply', () => {
  it('says what becomes of the pressure', () => {
    expect(headline(300)).toMatch(
      /^The compressor keeps up: it runs \d+ % of the time, starting \d+ times an hour\./u,
    );
    expect(headline(140)).toMatch(
      /^The compressor keeps up, but runs \d+ % of the time, where its maker allows 50 %/u,
    );
    expect(headline(110)).toMatch(
      /^The compressor keeps up only by never stopping: the receiver settles at /u,
    );
    expect(headline(60)).toMatch(/^A full receiver holds the pressure for .* minutes\. Then it sags to /u);
    expect(headline(10)).toMatch(
      /^A full receiver holds .*The compressor cannot keep the engine turning: it stops after /u,
    );
    expect(supplyVerdict(stopped)).toMatchObject({ statements: ['It stops.'], cautions: [] });
  });

  it('warns of what each of them can do, and always of the receiver', () => {
    expect(topics(300)).toEqual(['Frequent starts', 'Receiver']);
    expect(topics(60)).toEqual(['Hot compressor', 'Receiver']);
    expect(topics(10)).toEqual(['Stopped under air', 'Hot compressor', 'Receiver']);
    expect(supplyVerdict(timelineWith(300, 2)).cautions.map(({ topic }) => topic)).toEqual(['Receiver']);
  });

  it('says what would suffice', () => {
    const { statements } = supplyVerdict(timelineWith(60));
    expect(statements.join(' ')).toMatch(
      /A compressor has to give \d+ L\/min of free air to hold the pressure and run no more than 50 %/u,
    );
    expect(statements.join(' ')).toMatch(/To hold the pressure for 2 hours the receiver would have to be /u);
    expect(supplyVerdict(timelineWith(600)).statements.join(' ')).toContain(
      'would do instead of its 600 L/min',
    );
  });

  it('never says undefined, and nothing that is no number', () => {
    for (const flow of [10, 60, 110, 140, 300, 600]) {
      const { headline, figures, statements, cautions } = supplyVerdict(timelineWith(flow));
      const all = [headline, ...figures.flat(), ...statements, ...cautions.map(({ text }) => text)].join(
        '\n',
      );
      expect(all).not.toMatch(/undefined|NaN|Infinity|not known/u);
    }
  });
});

describe('the table', () => {
  const rows = supplyCsv(timelineWith(10).trace)
    .trimEnd()
    .split('\r\n')
    .map((row) => row.split(','));

  it('has units in its headers, and a row before and after each switch', () => {
    expect(rows[0]).toEqual([
      'time_s',
      'receiver_pressure_bar_abs',
      'supply_pressure_bar_abs',
      'speed_rpm',
      'compressor_on',
    ]);
    expect(rows[1]).toEqual(['0', '8', '4', '108.038', '0']);
    const on = rows.findIndex((row) => row[4] === '1');
    expect(rows[on]!.slice(0, 4)).toEqual(rows[on - 1]!.slice(0, 4));
    expect(rows[on]![1]).toBe('6');
  });

  it('ends with the engine at rest where it stops', () => {
    expect(rows.at(-1)!.slice(3)).toEqual(['0', '1']);
    expect(rows.at(-1)![0]).toBe(rows.at(-2)![0]);
  });
});

/** Every leaf as a path; list entries as `[]`. */
function leaves(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((entry) => leaves(entry, `${path}[]`));
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === '' ? key : `${path}.${key}`));
}

test('docs/minutes-of-supply.md lists exactly the keys there are', () => {
  const doc = readFileSync(new URL('../../../docs/minutes-of-supply.md', import.meta.url), 'utf8');
  const listed = [...doc.matchAll(/^\| `([^`]+)`/gmu)].map(([, key]) => key!);
  const { outcome, ...running } = supplyJson(timelineWith(60));
  expect(outcome).toBeNull();
  const atRest = leaves(supplyJson(stopped).outcome, 'outcome');
  expect([...new Set([...leaves(running), ...atRest])].sort()).toEqual(listed.sort());
});

test('the JSON has figures in the units of its keys, and null for what does not arise', () => {
  const { supply } = supplyJson(timelineWith(60));
  expect(supply).toMatchObject({
    end: 'settles',
    period_s: null,
    time_to_stop_s: null,
    duty: 1,
    starts_per_hour: 0,
  });
  expect(supply?.speed_rpm).toBeCloseTo((plainLaw.speed(4 * BAR) * 30) / Math.PI, 5);
  expect(supplyJson(timelineWith(300)).supply).toMatchObject({ end: 'cycles', time_to_sag_s: null });
  expect(supplyJson(stopped)).toMatchObject({ supply: null, outcome: { kind: 'stalled' } });
  for (const summary of [supplyJson(timelineWith(10)), supplyJson(stopped)])
    expect(JSON.parse(JSON.stringify(summary))).toEqual(summary);
});
