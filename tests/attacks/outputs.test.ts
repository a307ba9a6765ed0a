/** What comes out when every text that went in means harm: tables, pages, drawings, JSON and the terminal. */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parse } from 'csv-parse/sync';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tickover, type Said } from '../end-to-end/command.ts';
import { launched } from '../browser/report-page.ts';
import { hostileFolder, hostileTexts } from './hostile-files.ts';

const folder = hostileFolder();
const before = readdirSync(folder).sort();
const commands: readonly (readonly string[])[] = [
  ['check', 'press.yaml', 'disc.yaml'],
  ['run', 'press.yaml'],
  ['run', 'disc.yaml', '--json'],
  ['compare', 'press.yaml', 'disc.yaml'],
  ['draw', 'press.yaml'],
  ['sweep', 'study.yaml', '--workers', '1'],
  ['best', 'asked.yaml', '--workers', '1'],
  ['limit', 'asked.yaml', '--workers', '1'],
  ['odds', 'asked.yaml', '--workers', '1'],
  ['next', 'disc.yaml', '--workers', '1'],
  ['supply', 'press.yaml'],
  ['why', 'press-as-drawn.yaml', '--symptom', 'moves-and-stops'],
  ['bench', 'coast.yaml'],
  ['attempts', 'notebook.yaml'],
  ['run', 'disc.yaml', '--set', `title=${hostileTexts[1]}`, '--out', 'reports/set'],
];
const said: readonly Said[] = commands.map((args) => tickover(folder, ...args));

const written = readdirSync(join(folder, 'reports'), { recursive: true, encoding: 'utf8' }).filter((name) =>
  statSync(join(folder, 'reports', name)).isFile(),
);
const ofKind = (kind: string): string[] => written.filter((name) => extname(name) === kind);
const read = (name: string): string => readFileSync(join(folder, 'reports', name), 'utf8');

describe('hostile texts', () => {
  it('are taken for what they are', () => {
    expect(said.map(({ status, stderr }) => [status, stderr])).toEqual(commands.map(() => [0, '']));
  });

  it('come to a terminal without anything that could disturb it', () => {
    for (const { stdout } of said) expect(stdout).not.toMatch(/[^\n\P{Cc}]|[\p{Cf}\p{Zl}\p{Zp}]/u);
  });

  it('name no file and no folder', () => {
    expect(readdirSync(folder).sort()).toEqual([...before, 'reports'].sort());
    for (const name of written) expect(name).toMatch(/^[a-z-]+(?:\/[a-z-]+)*(?:\.study)?\.[a-z]+$/u);
  });

  it('are whole in JSON', () => {
    expect(JSON.parse(read('disc/summary.json'))).toMatchObject({ title: hostileTexts[2].trim() });
    for (const name of ['asked/best.json', 'asked/odds.json', 'disc/next.json', 'press/supply.json'])
      expect(() => JSON.parse(read(name)) as unknown, name).not.toThrow();
    const rows = read('study/sweep.jsonl').trimEnd().split('\n');
    expect(rows.map((row) => (JSON.parse(row) as { outcome: string }).outcome)).toEqual(
      hostileTexts.map(() => 'no-start'),
    );
  });
});

describe('tables', () => {
  const tables = ofKind('.csv');
  it('hold no cell that a spreadsheet would work out', () => {
    expect(tables).toEqual(
      expect.arrayContaining([
        'asked/odds.csv',
        'comparison/comparison.csv',
        'press/supply.csv',
        'study/sweep.csv',
      ]),
    );
    for (const name of tables)
      for (const cell of parse(read(name)).flat()) {
        const number = cell !== '' && Number.isFinite(Number(cell));
        if (!number) expect(cell, name).not.toMatch(/^\s*[=+\-@＝＋－＠]/u);
      }
  });

  it('still say what was written', () => {
    for (const name of ['study/sweep.csv', 'asked/odds.csv']) expect(read(name), name).toContain('HYPERLINK');
    expect(read('comparison/comparison.csv')).toContain('HYPERLINK');
  });
});

it('drawings for machines hold none of it', () => {
  const drawings = [...ofKind('.dxf'), ...ofKind('.svg')];
  expect(drawings.length).toBeGreaterThan(4);
  for (const name of drawings) expect(read(name), name).not.toMatch(/HYPERLINK|x\.example/u);
});

describe('pages in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launched();
  });
  afterAll(() => browser.close());

  it.each(ofKind('.html'))('%s runs nothing, asks for nothing, has only its own elements', async (name) => {
    const context = await browser.newContext({ offline: true });
    const page = await context.newPage();
    const address = pathToFileURL(join(folder, 'reports', name)).href;
    const troubles: string[] = [];
    page.on('console', (message) => troubles.push(message.text()));
    page.on('pageerror', (error) => troubles.push(error.message));
    page.on('dialog', (dialog) => {
      troubles.push(dialog.message());
      void dialog.dismiss();
    });
    context.on('request', (request) => {
      if (request.url() !== address) troubles.push(request.url());
    });
    await page.goto(address);
    expect(troubles).toEqual([]);
    const found = await page.evaluate(() => ({
      title: document.title,
      foreign: document.querySelectorAll(
        'img, iframe, object, embed, link, base, form, [name=x], [onload], [onerror]',
      ).length,
      refreshing: document.querySelectorAll('meta[http-equiv="refresh"]').length,
      scripts: document.querySelectorAll('script').length,
      sections: document.querySelectorAll('section').length,
      comments: document.createNodeIterator(document, NodeFilter.SHOW_COMMENT).nextNode(),
    }));
    expect(found.title).not.toBe('ran');
    expect(found).toMatchObject({ foreign: 0, refreshing: 0, comments: null });
    expect(found.scripts).toBeLessThanOrEqual(2);
    expect(found.sections).toBeGreaterThan(0);
    await context.close();
  });

  it('there is one for each command that writes one', () => {
    expect(ofKind('.html').sort()).toEqual([
      'asked/best.html',
      'asked/limit.html',
      'asked/odds.html',
      'coast/bench.html',
      'comparison/comparison.html',
      'disc/next.html',
      'disc/report.html',
      'notebook/bench.html',
      'press-as-drawn/bench.html',
      'press/drawings/setting.html',
      'press/drawings/sheets.html',
      'press/report.html',
      'set/report.html',
      'study/sweep.html',
    ]);
  });
});
