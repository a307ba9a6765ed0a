/**
 * Shards put together. Engine 1 is the first row of the first shard, engine 2 the first row of the second, and so on
 * round and round; line by line, so that memory does not grow with the study.
 */
import { createReadStream } from 'node:fs';
import { open, readdir, rename } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { InputError } from '../exit-codes.ts';
import { reasonOf } from '../scenario-file.ts';
import {
  enginesIn,
  rowPaths,
  rowsStanding,
  sheetAt,
  sheetText,
  wholeStudy,
  writing,
  type Sheet,
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
  await interleave(
    shards.map(({ csv }) => csv),
    whole.csv,
    { header: true, end: '\r\n' },
  );
  await interleave(
    shards.map(({ json }) => json),
    whole.json,
    { header: false, end: '\n' },
  );
  const sheet: Sheet = { ...first, shard: wholeStudy };
  await writing(whole.sheet, async () => {
    const file = await open(whole.sheet, 'w');
    await file.writeFile(sheetText(sheet)).finally(() => file.close());
  });
  return { engines: sheet.engines, paths: [whole.csv, whole.json] };
}

/** Sheets of all shards in their order; says what is missing. */
async function completeShards(folder: string): Promise<readonly [Sheet, ...Sheet[]]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new InputError(`${folder}: cannot read this folder, ${reasonOf(error)}.`);
  });
  const found = await Promise.all(
    names
      .filter((name) => /^sweep-\d+-of-\d+\.study\.json$/u.test(name))
      .map((name) => sheetAt(`${folder}/${name}`)),
  );
  const sheets = found.flatMap((own) => own ?? []).sort((a, b) => a.shard.index - b.shard.index);
  const [first] = sheets;
  if (first === undefined)
    throw new InputError(`${folder}: there are no shards of a sweep here (sweep-1-of-2.csv, …).`);
  const { of } = first.shard;
  if (sheets.some((own) => own.shard.of !== of || own.fingerprint !== first.fingerprint))
    throw new InputError(
      `${folder}: the shards here belong to different studies; keep those of one in a folder.`,
    );
  const problems = await Promise.all(Array.from({ length: of }, (_, i) => lack(folder, sheets, i + 1, of)));
  if (problems.some((own) => own !== undefined))
    throw new InputError(problems.flatMap((own) => own ?? []).join('\n'));
  return [first, ...sheets.slice(1)];
}

async function lack(
  folder: string,
  sheets: readonly Sheet[],
  index: number,
  of: number,
): Promise<string | undefined> {
  const sheet = sheets.find(({ shard }) => shard.index === index);
  const paths = rowPaths(folder, { index, of });
  if (sheet === undefined) return `${paths.csv}: is missing; run sweep --shard ${index}/${of}.`;
  const [rows, wanted] = [await rowsStanding(paths), enginesIn(sheet.shard, sheet.engines)];
  return rows < wanted
    ? `${paths.csv}: holds ${rows} of ${wanted} engines; run sweep --shard ${index}/${of} --resume.`
    : undefined;
}

const CHUNK = 1 << 16;

async function interleave(
  from: readonly string[],
  to: string,
  { header, end }: { readonly header: boolean; readonly end: string },
): Promise<void> {
  const readers = from.map((path) =>
    createInterface({ input: createReadStream(path), crlfDelay: Infinity })[Symbol.asyncIterator](),
  );
  const aside = `${to}.part`;
  await writing(to, async () => {
    const file = await open(aside, 'w');
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
    } finally {
      await file.close();
    }
    await rename(aside, to);
  });
}
