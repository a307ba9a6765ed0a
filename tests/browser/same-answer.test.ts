/**
 * The library in a browser says what it says in Node: the settled answer of every shipped scenario, figure by figure.
 *
 * Both are V8, but of different years, and those differ in the last bit of sine, logarithm and power. An adaptive method makes
 * more of such a bit, up to what it is asked to be right to. So the answers are compared twice: with the same elementary
 * functions in both, where nothing may differ, and with their own, where they agree as closely as an answer claims to be right.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { readScenario, settledRunning, SettledAnswer } from '../../src/index.ts';
import { launched } from './report-page.ts';
import { useSameElementaryFunctions } from './same-elementary-functions.ts';

/** Largest difference as a share of the value: of the same reckoning, and of an answer (docs/limits.md). */
const SAME = 1e-9;
const AS_RIGHT_AS_AN_ANSWER = 1e-3;

const folder = fileURLToPath(new URL('../../scenarios/', import.meta.url));
const files: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => /\.(yaml|csv)$/u.test(name))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
);
const scenarios = Object.keys(files).filter((name) => name.endsWith('.yaml'));

interface Library {
  readonly readScenario: typeof readScenario;
  readonly settledRunning: typeof settledRunning;
}

/** Runs in either place. */
function answerOf(library: Library, name: string, texts: Readonly<Record<string, string>>): SettledAnswer {
  const reading = library.readScenario(texts[name] ?? '', name, (path) => {
    const text = texts[path];
    return text === undefined ? { ok: false, reason: 'there is no such file' } : { ok: true, text };
  });
  if (!reading.ok) throw new Error(`${name} cannot be read`);
  return library.settledRunning(reading.spec);
}

/** Every figure of an answer with where it stands. */
function figures(value: unknown, path = ''): [path: string, figure: number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, own]) => figures(own, `${path}/${key}`));
}

const difference = (a: number, b: number): number => (a === b ? 0 : Math.abs(a - b) / Math.abs(a));

/** What the builder asks for. */
function mainFigures({ settled }: SettledAnswer): readonly number[] {
  if (settled === undefined) return [];
  const { speed, brakePower, indicatedMeanEffectivePressure, airMassFlow } = settled;
  return [speed, brakePower, indicatedMeanEffectivePressure, airMassFlow];
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
    // a ** b becomes Math.pow(a, b), which can be replaced.
    supported: { 'exponent-operator': false },
    logLevel: 'silent',
  });
  library = outputFiles[0]!.text.replace('var tickover =', 'globalThis.tickover =');
  browser = await launched();
});
afterAll(() => browser.close());

type AnswersOf = (names: readonly string[]) => Promise<readonly SettledAnswer[]>;

/** Both ask in one go: text that defines the library, then text that uses it. */
const program = (before: string, names: readonly string[]): string =>
  `${before}\n${library}\nJSON.stringify(${JSON.stringify(names)}.map((name) => ` +
  `(${answerOf.toString()})(globalThis.tickover, name, ${JSON.stringify(files)})))`;

const inNode =
  (before: string): AnswersOf =>
  (names) => {
    const context = createContext({ TextDecoder, TextEncoder, URL, structuredClone });
    return Promise.resolve(
      JSON.parse(String(runInContext(program(before, names), context))) as SettledAnswer[],
    );
  };

const inBrowser =
  (before: string): AnswersOf =>
  async (names) => {
    const context = await browser.newContext({ offline: true });
    const page = await context.newPage();
    const text = await page.evaluate(program(before, names));
    await context.close();
    return JSON.parse(String(text)) as SettledAnswer[];
  };

async function compared(
  before: string,
  judge: (here: SettledAnswer, there: SettledAnswer) => number,
): Promise<ReadonlyMap<string, number>> {
  const [here, there] = [await inNode(before)(scenarios), await inBrowser(before)(scenarios)];
  return new Map(scenarios.map((name, i) => [name, judge(here[i]!, there[i]!)]));
}

const worst = (found: ReadonlyMap<string, number>): number => Math.max(...found.values());

describe('Chromium says what Node says of every shipped scenario', () => {
  it('to the last figure, with the same elementary functions', async () => {
    const before = `(${useSameElementaryFunctions.toString()})(Math);`;
    const found = await compared(before, (here, there) => {
      const [ours, theirs] = [figures(here), figures(there)];
      expect(ours.length).toBeGreaterThan(3);
      expect(theirs.map(([path]) => path)).toEqual(ours.map(([path]) => path));
      return Math.max(...ours.map(([, own], i) => difference(own, theirs[i]![1])));
    });
    expect(found.size).toBe(scenarios.length);
    expect(worst(found), JSON.stringify([...found])).toBeLessThan(SAME);
  });

  it('as closely as an answer is right, with its own', async () => {
    const found = await compared('', (here, there) => {
      expect(there.outcome.kind).toBe(here.outcome.kind);
      const [ours, theirs] = [mainFigures(here), mainFigures(there)];
      return Math.max(0, ...ours.map((own, i) => difference(own, theirs[i]!)));
    });
    if (process.env['ATTACKS'] !== undefined) console.log(found);
    expect(worst(found), JSON.stringify([...found])).toBeLessThan(AS_RIGHT_AS_AN_ANSWER);
  });
});
