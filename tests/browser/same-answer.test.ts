/**
 * The library as it is shipped says in a browser what it says in Node, of every shipped scenario: its whole run from its start,
 * and the settled answer that studies ask for.
 *
 * Both are V8, but of different years, which round sine, logarithm and power differently. None of those is used
 * (src/numerics/elementary), so nothing at all may differ.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { readScenario, runEngine, settledRunning } from '../../src/index.ts';
import { launched } from './report-page.ts';

const folder = fileURLToPath(new URL('../../scenarios/', import.meta.url));
const files: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => /\.(yaml|csv)$/u.test(name))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
);
const scenarios = Object.keys(files).filter((name) => name.endsWith('.yaml'));

interface Library {
  readonly readScenario: typeof readScenario;
  readonly runEngine: typeof runEngine;
  readonly settledRunning: typeof settledRunning;
}

/** Of each part of an answer: how many figures it has, and a sum over all their bits. */
type Digest = Readonly<Record<string, readonly [count: number, sum: number]>>;

/** The whole run and the settled answer in short. In either place: whatever it needs is inside. */
function digestOf(library: Library, name: string, texts: Readonly<Record<string, string>>): Digest {
  const reading = library.readScenario(texts[name] ?? '', name, (path) => {
    const text = texts[path];
    return text === undefined ? { ok: false, reason: 'there is no such file' } : { ok: true, text };
  });
  if (!reading.ok) throw new Error(`${name} cannot be read`);
  const bits = new DataView(new ArrayBuffer(8));
  const digest: Record<string, [number, number]> = {};
  const add = (value: unknown, path: readonly string[]): void => {
    if (typeof value === 'number') {
      bits.setFloat64(0, value);
      const own = (digest[path.slice(0, 3).join('/')] ??= [0, 0]);
      own[0] += 1;
      own[1] = (Math.imul(own[1], 31) + Math.imul(bits.getInt32(0), 17) + bits.getInt32(4)) | 0;
    } else if (ArrayBuffer.isView(value)) (value as Float64Array).forEach((own) => add(own, path));
    else if (typeof value === 'object' && value !== null)
      for (const [key, own] of Object.entries(value)) add(own, [...path, key]);
  };
  add(reading.spec, ['scenario']);
  add(library.runEngine(reading.spec), ['run']);
  add(library.settledRunning(reading.spec), ['settled']);
  return digest;
}

let browser: Browser;
let library: string;
beforeAll(async () => {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('../../src/index.ts', import.meta.url))],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'tickover',
    platform: 'browser',
    logLevel: 'silent',
  });
  library = outputFiles[0]!.text.replace('var tickover =', 'globalThis.tickover =');
  browser = await launched();
});
afterAll(() => browser.close());

const program = (name: string): string =>
  `JSON.stringify((${digestOf.toString()})(globalThis.tickover, ${JSON.stringify(name)}, ${JSON.stringify(files)}))`;

describe('Chromium says what Node says, to the last bit, of', () => {
  let page: Page;
  beforeAll(async () => {
    runInThisContext(library);
    page = await (await browser.newContext({ offline: true })).newPage();
    await page.evaluate(library);
  });

  it.each(scenarios)('%s', async (name) => {
    const text = program(name);
    const here = JSON.parse(String(runInThisContext(text))) as Digest;
    const there = JSON.parse(await page.evaluate<string>(text)) as Digest;
    expect(Object.keys(here).length).toBeGreaterThan(20);
    expect(there).toEqual(here);
  });
});
