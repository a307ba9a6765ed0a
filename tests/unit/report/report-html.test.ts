import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../../src/report/report-html.ts';
import type { RunResult } from '../../../src/run/result.ts';
import * as results from './synthetic-result.ts';

const { doubleActingResult, noStartResult, settledResult } = results;
const assets = {
  script: { text: 'draw();', sha256: 'SCRIPT' },
  style: { text: 'p{}', sha256: 'STYLE' },
};
const page = (result: RunResult): string => reportHtml(result, assets);

test.each(Object.entries(results))(
  '%s: no number that is none, no reference to anything outside',
  (_name, result) => {
    const text = page(result);
    expect(text).not.toMatch(/NaN|Infinity|undefined|not known/u);
    expect(text).not.toMatch(/\b(?:src|href|action)=|https?:/u);
    expect(page({ ...result })).toBe(text);
  },
);

test('the policy names the two assets by their hashes and nothing else', () => {
  expect(page(settledResult)).toContain(
    `content="default-src 'none'; script-src 'sha256-SCRIPT'; style-src 'sha256-STYLE'; base-uri 'none'; form-action 'none'"`,
  );
});

describe('hostile text', () => {
  const hostile = '<script>alert(1)</script></title><img src=x onerror="alert(2)">\'"&\u2028<!--';
  const settled = settledResult.settled!;
  const result: RunResult = {
    ...settledResult,
    title: hostile,
    notes: hostile,
    settled: {
      ...settled,
      air: { ...settled.air, leaks: [{ name: hostile, share: 0.9 }] },
      passages: settled.passages.map((passage) => ({ ...passage, name: hostile })),
    },
    engine: {
      ...settledResult.engine,
      valveGearKind: hostile,
      derivedSizes: [{ label: hostile, value: 1e-3, dimension: 'length' }],
    },
  };

  test('stays text wherever it is shown', () => {
    const text = page(result);
    expect(text.match(/<script/gu)).toHaveLength(2);
    expect(text).not.toContain('<img');
    expect(text).not.toContain('<!--');
    expect(text.match(/&lt;script&gt;alert\(1\)/gu)!.length).toBeGreaterThanOrEqual(7);
  });

  test('an asset that would end its own element is refused', () => {
    const script = { text: 'x = "</SCRIPT>"', sha256: '' };
    expect(() => reportHtml(settledResult, { ...assets, script })).toThrow('contains "</script"');
  });
});

describe('an engine that does not run', () => {
  const text = page(noStartResult);

  test.each(['answer', 'cautions', 'start', 'numbers', 'sizes'])('has the section "%s"', (id) => {
    expect(text).toContain(`<section id="${id}"`);
  });

  test.each(['indicator', 'turn', 'air', 'work'])('leaves out the section "%s"', (id) => {
    expect(text).not.toContain(`<section id="${id}"`);
  });

  test('shows the pressures of the start and names no file that is not written', () => {
    expect(text).toContain('data-chart="trace-pressures"');
    expect(text).not.toContain('cycle.csv');
  });
});

test('every place for a chart has its data, and the other way round', () => {
  for (const result of Object.values(results)) {
    const text = page(result);
    const json = /id="report-data">(.*?)<\/script>/u.exec(text)![1]!;
    const { charts } = JSON.parse(json) as {
      charts: { id: string; x: { values: unknown[] }; lines: { values: unknown[] }[] }[];
    };
    const places = [...text.matchAll(/data-chart="([^"]+)"/gu)].map(([, id]) => id);
    expect(charts.map(({ id }) => id)).toEqual(places);
    for (const { x, lines } of charts)
      for (const { values } of lines) expect(values).toHaveLength(x.values.length);
  }
});

describe('an engine with two working ends', () => {
  const text = page(doubleActingResult);
  const single = page(settledResult);
  const chartLabels = (html: string): string[] =>
    [...html.matchAll(/"label":"([^"]+)","ink"/gu)].map(([, label]) => label!);

  test('has a second loop in its indicator diagram, and a key to both', () => {
    expect(text.match(/<path class="further" d="M[^"]+Z"/gu)).toHaveLength(1);
    expect(text).toMatch(/<path class="first"[^>]*\/><\/svg>cover end/u);
    expect(text).toMatch(/<path class="further"[^>]*\/><\/svg>crank end/u);
    expect(text).toContain('The four events of the cover end');
  });

  test('has both pressures over the turn', () => {
    expect(chartLabels(text)).toEqual(expect.arrayContaining(['cover end', 'crank end', 'valve chest']));
  });

  test('says what is in which end, and what stands in front of the regulator', () => {
    expect(text).toContain('In the crank end');
    expect(text).toContain('2: cover end; crank end');
    expect(text).toContain('9.00\u00a0bar gauge');
  });

  test('with a single end nothing of this is said', () => {
    expect(single).not.toMatch(/class="further"|of the cylinder<|Working ends|In front of it/u);
    expect(chartLabels(single)).toContain('cylinder');
  });

  test('with a dozen ends the charts show the first five and say so', () => {
    const [end] = settledResult.settled!.profile.ends;
    const ends = Array.from({ length: 12 }, (_, i) => ({ ...end, name: `end ${i + 1}` }));
    const [first, ...others] = ends as [typeof end, ...(typeof end)[]];
    const settled = settledResult.settled!;
    const dozen = page({
      ...settledResult,
      settled: { ...settled, profile: { ...settled.profile, ends: [first, ...others] } },
    });
    expect(chartLabels(dozen).filter((label) => label.startsWith('end '))).toHaveLength(5);
    expect(dozen).toMatch(/The first 5 of 12 working ends are drawn/u);
  });
});
