/**
 * The rows of a sweep on disk: a CSV file, a file of JSON lines and a sheet that says which study they belong to. Until the
 * last row stands, their names end in ".part". Rows are only ever added at the end, in the order of the engines; so whatever
 * ends the program, what is written is the beginning of the finished file, save for a last line that may be torn. Whoever
 * goes on cuts that off and writes behind it.
 */
import { createReadStream, existsSync } from 'node:fs';
import { open, readFile, rename, truncate } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { makeFolder, writeFiles, writing } from '../aside.ts';
import { InputError } from '../exit-codes.ts';
import { codeOf } from '../reasons.ts';
import { lock } from './lock.ts';

/** Which share of a study: the first of four is 1 of 4. */
export interface Shard {
  readonly index: number;
  readonly of: number;
}

export const wholeStudy: Shard = { index: 1, of: 1 };

/** How many engines of a study belong to a shard; the first belongs to the first, the second to the second. */
export const enginesIn = ({ index, of }: Shard, engines: number): number =>
  Math.max(0, Math.ceil((engines - (index - 1)) / of));

/** What the rows are of. */
export interface Sheet {
  /** Of everything that decides about the rows of the whole study. */
  readonly fingerprint: string;
  /** In the whole study. */
  readonly engines: number;
  readonly shard: Shard;
}

/** As it is written: once all rows stand, what is left to do is to give them their names. */
interface WrittenSheet extends Sheet {
  readonly finished: boolean;
}

export interface RowFiles {
  /** Rows that stand already. */
  readonly rows: number;
  readonly append: (csv: string, json: string) => Promise<void>;
  /** All rows stand: the files get their names. */
  readonly finish: () => Promise<void>;
  readonly close: () => Promise<void>;
}

export interface RowPaths {
  readonly csv: string;
  readonly json: string;
  readonly sheet: string;
}

export function rowPaths(folder: string, { index, of }: Shard): RowPaths {
  const name = of === 1 ? 'sweep' : `sweep-${index}-of-${of}`;
  return {
    csv: join(folder, `${name}.csv`),
    json: join(folder, `${name}.jsonl`),
    sheet: join(folder, `${name}.study.json`),
  };
}

const part = (path: string): string => `${path}.part`;

/** What the files are called until the last row stands. */
export const partsOf = ({ csv, json, sheet }: RowPaths): RowPaths => ({
  csv: part(csv),
  json: part(json),
  sheet: part(sheet),
});

export const sheetText = (sheet: WrittenSheet): string => `${JSON.stringify(sheet, null, 2)}\n`;

async function sheetAt(path: string): Promise<WrittenSheet | undefined> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as WrittenSheet;
  } catch {
    return undefined;
  }
}

/** What there is of a sweep. */
export interface Standing {
  readonly sheet: WrittenSheet;
  /** Rows that stand whole in both files. */
  readonly rows: number;
}

/** A sweep that was stopped, or else the finished one. */
export async function standingAt(paths: RowPaths): Promise<Standing | undefined> {
  const stopped = await sheetAt(part(paths.sheet));
  const sheet = stopped ?? (await sheetAt(paths.sheet));
  if (sheet === undefined) return undefined;
  const [table, lines] = await Promise.all(
    [paths.csv, paths.json].map(async (path) => {
      const own = stopped !== undefined && (!sheet.finished || existsSync(part(path))) ? part(path) : path;
      return (await wholeLines(own)).lines;
    }),
  );
  const rows = Math.max(0, Math.min((table ?? 0) - 1, lines ?? 0));
  // Somebody has taken rows away: then nothing can be said about the others.
  return sheet.finished && rows < enginesIn(sheet.shard, sheet.engines) ? undefined : { sheet, rows };
}

/** Runs something that adds rows; on a full disk those before them stand. */
function adding<T>(path: string, work: () => Promise<T>): Promise<T> {
  return writing(path, () =>
    work().catch((error: unknown) => {
      if (!['ENOSPC', 'EDQUOT', 'EFBIG'].includes(codeOf(error))) throw error;
      throw new InputError(
        `${path}: cannot write, the disk is full. The rows written so far stand; make room and go on with --resume.`,
      );
    }),
  );
}

/** Whole lines of a file, at most `most` of them, and the byte behind the last one; a file that is not there has none. */
async function wholeLines(
  path: string,
  most = Infinity,
): Promise<{ readonly lines: number; readonly end: number }> {
  let [lines, end, read] = [0, 0, 0];
  try {
    for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
      for (let at = chunk.indexOf(10); at >= 0; at = chunk.indexOf(10, at + 1)) {
        lines += 1;
        end = read + at + 1;
        if (lines >= most) return { lines, end };
      }
      read += chunk.length;
    }
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
  return { lines, end };
}

async function cut(path: string, lines: number): Promise<void> {
  const { end } = lines === 0 ? { end: 0 } : await wholeLines(path, lines);
  await truncate(path, end);
}

/** Begins the files of a sweep anew, or opens those there are behind the rows that stand. */
export async function openRowFiles(
  folder: string,
  sheet: Sheet,
  header: string,
  resume: boolean,
): Promise<RowFiles> {
  const paths = rowPaths(folder, sheet.shard);
  await makeFolder(folder);
  const unlock = await lock(paths.sheet.replace(/study\.json$/u, 'lock'));
  try {
    const found = await standingAt(paths);
    if (found !== undefined && found.rows > 0) refuseToMix(paths, found, sheet, resume);
    const rows = resume && found?.sheet.fingerprint === sheet.fingerprint ? found.rows : 0;
    const finished = rows > 0 && found?.sheet.finished === true;
    const files = await (finished ? finishedFiles(paths) : begunFiles(folder, paths, sheet, header, rows));
    return { rows, ...files, close: () => files.close().finally(unlock) };
  } catch (error) {
    await unlock();
    throw error;
  }
}

type Files = Omit<RowFiles, 'rows'>;

function refuseToMix(paths: RowPaths, { sheet, rows }: Standing, wanted: Sheet, resume: boolean): void {
  if (resume && sheet.fingerprint !== wanted.fingerprint) throw anotherStudy(paths, sheet);
  if (!resume && !sheet.finished) throw unfinished(paths, sheet, rows);
}

/** All rows stood when it was ended; perhaps not all of them under their names. */
function finishedFiles(paths: RowPaths): Files {
  const nothing = (): Promise<void> => Promise.resolve();
  return { append: nothing, finish: () => putInPlace(paths), close: nothing };
}

async function begunFiles(
  folder: string,
  paths: RowPaths,
  sheet: Sheet,
  header: string,
  rows: number,
): Promise<Files> {
  const parts = partsOf(paths);
  const csv = await writing(parts.csv, () => open(parts.csv, 'a'));
  const json = await writing(parts.json, () => open(parts.json, 'a'));
  const say = (finished: boolean): Promise<unknown> =>
    writeFiles(folder, [[basename(parts.sheet), sheetText({ ...sheet, finished })]]);
  await writing(parts.csv, () => cut(parts.csv, rows === 0 ? 0 : rows + 1));
  await writing(parts.json, () => cut(parts.json, rows));
  await say(false);
  if (rows === 0) await adding(parts.csv, () => csv.appendFile(header));
  return {
    append: async (table, lines) => {
      await adding(parts.csv, () => csv.appendFile(table));
      await adding(parts.json, () => json.appendFile(lines));
    },
    finish: async () => {
      await adding(parts.csv, () => csv.sync());
      await adding(parts.json, () => json.sync());
      await say(true);
      await putInPlace(paths);
    },
    close: async () => {
      await Promise.all([csv.close(), json.close()]);
    },
  };
}

/** The sheet comes last: until then whoever goes on finds that this is still to do. */
async function putInPlace(paths: RowPaths): Promise<void> {
  for (const path of [paths.csv, paths.json, paths.sheet])
    await writing(path, () =>
      rename(part(path), path).catch((error: unknown) => {
        if (codeOf(error) !== 'ENOENT') throw error;
      }),
    );
}

function unfinished(paths: RowPaths, { engines, shard }: Sheet, standing: number): InputError {
  return new InputError(
    `${part(paths.csv)}: holds ${standing} of ${enginesIn(shard, engines)} engines of a sweep that was stopped. ` +
      'Go on with --resume, or take the file away to begin anew.',
  );
}

const anotherStudy = (paths: RowPaths, { finished }: WrittenSheet): InputError =>
  new InputError(
    `${finished ? paths.csv : part(paths.csv)}: its rows belong to another study, or the study or its scenario has ` +
      'changed since. Take the file away to begin anew, or write somewhere else with --out.',
  );
