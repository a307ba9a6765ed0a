/** Rows on disk: what stands after a stop, going on, shards put together, a full disk, a worker that dies. */
import {
  appendFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';

import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/cli/exit-codes.ts';
import { mergeShards } from '../../../src/cli/studies/merge-shards.ts';
import { enginesIn, openRowFiles, wholeStudy, type Shard } from '../../../src/cli/studies/row-files.ts';
import { withRowFile } from '../../../src/cli/studies/row-file.ts';
import { sweep, sweepHeader, type SweepTask } from '../../../src/cli/studies/sweep.ts';
import { startWorkers, type Workers } from '../../../src/cli/studies/workers.ts';
import type { EngineAnswer } from '../../../src/study/engine-answer.ts';
import { rangeOf } from '../../../src/study/variations/range.ts';

const folder = (): string => mkdtempSync(join(tmpdir(), 'tickover-rows-'));
const silent = { advance: () => undefined, end: () => undefined };
const bore = rangeOf(['bore'], { from: 1, to: 41, unit: 'mm' }, 41);

const taskOf = (shard: Shard): SweepTask => ({
  plan: { variations: [bore], count: 41, point: (n) => [bore.level(n)] },
  conditions: [],
  shard,
});

const answer = (value: string): EngineAnswer => ({
  outcome: 'settled',
  reason: `It settles\nwith ${value} Ø, "quoted".`,
  values: { speed: Number.parseFloat(value) },
});

/** Answers late and out of order. */
function workers(count: number): Workers & { readonly asked: string[] } {
  const asked: string[] = [];
  return {
    count,
    asked,
    ask: async (engines) => {
      const values = engines.map(([own]) => own?.value ?? '');
      asked.push(...values);
      await new Promise((resolve) => setTimeout(resolve, (values.length * 7919) % 13));
      return values.map(answer);
    },
    close: () => Promise.resolve(),
  };
}

interface Ran {
  readonly rows: number;
  readonly asked: readonly string[];
}

async function swept(
  out: string,
  own: { shard?: Shard; resume?: boolean; fingerprint?: string; count?: number; stopAfter?: number } = {},
): Promise<Ran> {
  const task = taskOf(own.shard ?? wholeStudy);
  const sheet = { fingerprint: own.fingerprint ?? 'f', engines: 41, shard: task.shard };
  const files = await openRowFiles(out, sheet, sweepHeader(task), own.resume ?? false);
  const crew = workers(own.count ?? 2);
  let done = 0;
  const progress = { ...silent, advance: (rows: number) => void (done = rows) };
  const rows = await sweep(task, crew, files, progress, () => done >= (own.stopAfter ?? Infinity));
  if (rows === enginesIn(task.shard, 41)) await files.finish();
  await files.close();
  return { rows, asked: crew.asked };
}

const names = ['sweep.csv', 'sweep.jsonl', 'sweep.study.json'];
const contents = (out: string): string[] => names.map((name) => readFileSync(join(out, name), 'utf8'));
const linesIn = (out: string, name: string): string[] =>
  readFileSync(join(out, name), 'utf8').trimEnd().split('\n');

const whole = folder();
await swept(whole);

describe('the rows of a sweep', () => {
  it('stand in order, one line each, whatever the reasons hold', () => {
    const lines = linesIn(whole, 'sweep.csv');
    expect(lines).toHaveLength(42);
    expect(lines[41]).toMatch(/^41,41,settled,"It settles with 41 mm Ø, ""quoted""\.",/u);
    expect(linesIn(whole, 'sweep.jsonl')).toHaveLength(41);
  });

  it.each([1, 3, 8])('are the same with %i workers', async (count) => {
    const out = folder();
    await swept(out, { count });
    expect(contents(out)).toEqual(contents(whole));
  });
});

describe('going on', () => {
  it('neither repeats a row nor loses one', async () => {
    const out = folder();
    const first = await swept(out, { stopAfter: 11, count: 1 });
    expect(first.rows).toBeGreaterThanOrEqual(11);
    expect(first.rows).toBeLessThan(41);
    const rest = await swept(out, { resume: true });
    expect(rest.asked).toHaveLength(41 - first.rows);
    expect(contents(out)).toEqual(contents(whole));
  });

  it('cuts off a line that was torn, and rows that stand in one file only', async () => {
    const out = folder();
    await swept(out, { stopAfter: 11 });
    const csv = join(out, 'sweep.csv.part');
    truncateSync(csv, Buffer.byteLength(readFileSync(csv)) - 5);
    appendFileSync(join(out, 'sweep.jsonl.part'), '{"engine":99,"sett');
    await swept(out, { resume: true });
    expect(contents(out)).toEqual(contents(whole));
  });

  it('begins at the beginning where there is nothing', async () => {
    const out = folder();
    await swept(out, { resume: true });
    expect(contents(out)).toEqual(contents(whole));
  });

  it('refuses to write over a sweep that was stopped, and to go on with another study', async () => {
    const out = folder();
    const { rows } = await swept(out, { stopAfter: 11 });
    await expect(swept(out)).rejects.toThrow(
      `holds ${rows} of 41 engines of a sweep that was stopped. Go on with --resume`,
    );
    await expect(swept(out, { resume: true, fingerprint: 'g' })).rejects.toThrow(
      'its rows belong to another study',
    );
    await swept(out, { resume: true });
    expect(contents(out)).toEqual(contents(whole));
    // A finished one is simply made again.
    await swept(out);
    expect(contents(out)).toEqual(contents(whole));
  });
});

describe('shards', () => {
  const shards = (of: number): Shard[] => Array.from({ length: of }, (_, i) => ({ index: i + 1, of }));

  it.each([2, 5, 50])('%i of them make the same files', async (of) => {
    const out = folder();
    expect(shards(of).reduce((sum, shard) => sum + enginesIn(shard, 41), 0)).toBe(41);
    for (const shard of shards(of)) await swept(out, { shard });
    expect(await mergeShards(out)).toMatchObject({ engines: 41 });
    expect(contents(out)).toEqual(contents(whole));
  });

  it('are refused when one is missing, unfinished or of another study', async () => {
    const out = folder();
    await expect(mergeShards(out)).rejects.toThrow('there are no shards');
    await swept(out, { shard: { index: 1, of: 3 }, stopAfter: 2, count: 1 });
    await swept(out, { shard: { index: 3, of: 3 } });
    await expect(mergeShards(out)).rejects.toThrow(
      /sweep-1-of-3\.csv: holds \d+ of 14 engines; run sweep --shard 1\/3 --resume\.\n.*sweep-2-of-3\.csv: is missing; run sweep --shard 2\/3\./u,
    );
    await swept(out, { shard: { index: 2, of: 3 }, fingerprint: 'g' });
    await expect(mergeShards(out)).rejects.toThrow('different studies');
  });
});

describe('a file of rows', () => {
  it('is there when it is whole, and not before', async () => {
    const path = join(folder(), 'odds.csv');
    writeFileSync(path, 'of an earlier run');
    await withRowFile(path, 'header\r\n', (add) => {
      add('row\r\n');
      expect(readFileSync(path, 'utf8')).toBe('of an earlier run');
      return Promise.resolve();
    });
    expect(readFileSync(path, 'utf8')).toBe('header\r\nrow\r\n');
  });

  it('is not there at all when the work fails', async () => {
    const out = folder();
    const work = (): Promise<never> => Promise.reject(new Error('the work failed'));
    await expect(withRowFile(join(out, 'odds.csv'), 'header\r\n', work)).rejects.toThrow('the work failed');
    expect(readdirSync(out)).toEqual([]);
  });
});

describe('until the last row stands', () => {
  it('no file of a sweep looks like a finished one, and an earlier one stays', async () => {
    const out = folder();
    await swept(out, { stopAfter: 11 });
    expect(readdirSync(out).sort()).toEqual(names.map((name) => `${name}.part`));
    const again = folder();
    await swept(again);
    await swept(again, { fingerprint: 'g', stopAfter: 11 });
    expect(contents(again)).toEqual(contents(whole));
    expect(existsSync(join(again, 'sweep.csv.part'))).toBe(true);
    await swept(again, { fingerprint: 'g', resume: true });
    expect(readdirSync(again).sort()).toEqual(names);
    expect(contents(again)[2]).toContain('"fingerprint": "g"');
  });

  it.each([1, 2])('nothing is run again when it ended with %i of the names given', async (given) => {
    const out = folder();
    await swept(out);
    for (const name of names.slice(given)) renameSync(join(out, name), join(out, `${name}.part`));
    expect((await swept(out, { resume: true })).asked).toEqual([]);
    expect(readdirSync(out).sort()).toEqual(names);
    expect(contents(out)).toEqual(contents(whole));
  });

  it('begins anew where somebody took the rows away', async () => {
    const out = folder();
    await swept(out);
    rmSync(join(out, 'sweep.csv'));
    expect((await swept(out, { resume: true })).asked).toHaveLength(41);
    expect(contents(out)).toEqual(contents(whole));
  });
});

describe('two sweeps into one folder', () => {
  it('the second is refused while the first is alive, not after it was killed', async () => {
    const out = folder();
    const lock = join(out, 'sweep.lock');
    writeFileSync(lock, `${process.pid} ${hostname()}\n`);
    await expect(swept(out)).rejects.toThrow(
      `${lock}: another sweep is writing here (process ${process.pid}).`,
    );
    expect(readdirSync(out)).toEqual(['sweep.lock']);
    for (const left of ['4194305 ' + hostname(), `${process.pid} another-machine`, '', 'x']) {
      writeFileSync(lock, left);
      await swept(out);
      expect(readdirSync(out).sort()).toEqual(names);
    }
  });

  it('shards do not hinder each other', async () => {
    const out = folder();
    await Promise.all([1, 2, 3].map((index) => swept(out, { shard: { index, of: 3 } })));
    await mergeShards(out);
    expect(contents(out)).toEqual(contents(whole));
  });
});

describe('a place that cannot be written to', () => {
  it('is said to be', async () => {
    const out = folder();
    rmSync(out, { recursive: true });
    appendFileSync(out, 'a file where a folder should be');
    await expect(swept(out)).rejects.toThrow(InputError);
  });
});

describe('workers', () => {
  it('that die take only the engine they died of with them, and go on', async () => {
    const crew = startWorkers(new URL('./dying-worker.mjs', import.meta.url), undefined, 2);
    const engines = Array.from({ length: 20 }, (_, i) => [{ path: 'n', value: String(i) }]);
    const answers = await crew.ask(engines);
    await crew.close();
    expect(answers.map(({ outcome }) => outcome)).toEqual(
      engines.map((_, i) => (i === 7 || i === 13 ? 'broken-off' : 'settled')),
    );
    expect(answers[12]?.values.speed).toBe(12);
    expect(answers[7]?.reason).toMatch(
      /^The program broke off on this engine \(its thread ended with code 3\)/u,
    );
    expect(answers[13]?.reason).toMatch(/^The program broke off on this engine \(unlucky\)/u);
  });
});
