/**
 * Shards put together. Engine 1 is the first row of the first shard, engine 2 the first row of the second, and so on
 * round and round; line by line, so that memory does not grow with the study.
 */
import { createReadStream } from 'node:fs';
import { open, readdir, rename, rm } from 'node:fs/promises';
import { basename } from 'node:path';
import { createInterface } from 'node:readline';
import { asideOf, writeFiles, writing } from '../aside.ts';
import { InputError } from '../exit-codes.ts';
import { whyUnread } from '../reasons.ts';
import {
  enginesIn,
  rowPaths,
  sheetText,
  standingAt,
  wholeStudy,
  type Shard,
  type Sheet,
  type Standing,
} from './row-files.ts';

export interface Merged {
  readonly engines: number;
  readonly paths: readonly string[];
}

export async function mergeShards(folder: string): Promise<Merged> {
  const sheets = await completeShards(folder);
  const [first] = sheets;
  const shards = sheets.map(({ shard }) => rowPaths(folder, shard));
  const whole = rowPaths(folder, wholeStudy);
  const table = asideOf(whole.csv);
  const lines = asideOf(whole.json);
  try {
    await interleave(
      shards.map(({ csv }) => csv),
      { to: whole.csv, aside: table, header: true, end: '\r\n' },
    );
    await interleave(
      shards.map(({ json }) => json),
      { to: whole.json, aside: lines, header: false, end: '\n' },
    );
    // The sheet says which study the rows are of: an earlier one goes before them, the new one comes behind them.
    await writing(whole.sheet, () => rm(whole.sheet, { force: true }));
    await writing(whole.csv, () => rename(table, whole.csv));
    await writing(whole.json, () => rename(lines, whole.json));
  } catch (error) {
    await Promise.all([table, lines].map((aside) => rm(aside, { force: true })));
    throw error;
  }
  await writeFiles(folder, [
    [basename(whole.sheet), sheetText({ ...first, shard: wholeStudy, finished: true })],
  ]);
  return { engines: first.engines, paths: [whole.csv, whole.json] };
}

/** Sheets of all shards in their order; says what is missing. */
async function completeShards(folder: string): Promise<readonly [Sheet, ...Sheet[]]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new InputError(`${folder}: cannot read this folder, ${whyUnread(error)}.`);
  });
  const shards = names.flatMap((name) => {
    const [, index, of] = /^sweep-(\d+)-of-(\d+)\.study\.json(?:\.part)?$/u.exec(name) ?? [];
    return index === undefined ? [] : [{ index: Number(index), of: Number(of) }];
  });
  const found = await Promise.all(shards.map((shard) => standingAt(rowPaths(folder, shard))));
  const standing = found
    .flatMap((own) => own ?? [])
    .sort((a, b) => a.sheet.shard.index - b.sheet.shard.index);
  const [first] = standing;
  if (first === undefined)
    throw new InputError(`${folder}: there are no shards of a sweep here (sweep-1-of-2.csv, …).`);
  const { shard, fingerprint } = first.sheet;
  if (standing.some(({ sheet }) => sheet.shard.of !== shard.of || sheet.fingerprint !== fingerprint))
    throw new InputError(
      `${folder}: the shards here belong to different studies; keep those of one in a folder.`,
    );
  const sheets = Array.from({ length: shard.of }, (_, i) =>
    standing.find(({ sheet }) => sheet.shard.index === i + 1),
  );
  const problems = sheets.flatMap((own, i) => lack(folder, own, { index: i + 1, of: shard.of }) ?? []);
  if (problems.length > 0) throw new InputError(problems.join('\n'));
  return [first.sheet, ...sheets.slice(1).flatMap((own) => own?.sheet ?? [])];
}

function lack(folder: string, own: Standing | undefined, shard: Shard): string | undefined {
  const { csv } = rowPaths(folder, shard);
  const share = `--shard ${shard.index}/${shard.of}`;
  if (own === undefined) return `${csv}: is missing; run sweep ${share}.`;
  const { sheet, rows } = own;
  return sheet.finished
    ? undefined
    : `${csv}: holds ${rows} of ${enginesIn(sheet.shard, sheet.engines)} engines; run sweep ${share} --resume.`;
}

const CHUNK = 1 << 16;

interface Interleaved {
  readonly to: string;
  /** Where it stands until it is put in place. */
  readonly aside: string;
  readonly header: boolean;
  readonly end: string;
}

async function interleave(from: readonly string[], { to, aside, header, end }: Interleaved): Promise<void> {
  const readers = from.map((path) =>
    createInterface({ input: createReadStream(path), crlfDelay: Infinity })[Symbol.asyncIterator](),
  );
  await writing(to, async () => {
    const file = await open(aside, 'wx');
    try {
      let text = '';
      const take = async (i: number, keep: boolean): Promise<boolean> => {
        const line = await readers[i]?.next();
        if (line === undefined || line.done === true) return false;
        if (keep) text += line.value + end;
        return true;
      };
      if (header) for (let i = 0; i < readers.length; i += 1) await take(i, i === 0);
      for (let engine = 0; await take(engine % readers.length, true); engine += 1)
        if (text.length > CHUNK) {
          await file.appendFile(text);
          text = '';
        }
      await file.appendFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
  });
}
