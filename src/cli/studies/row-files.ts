/**
 * The rows of a sweep on disk: a CSV file, a file of JSON lines and a sheet that says which study they belong to. Rows are
 * only ever added at the end, in the order of the engines; so whatever ends the program, what is written is the beginning
 * of the finished file, save for a last line that may be torn. Whoever goes on cuts that off and writes behind it.
 */
import { createReadStream } from 'node:fs';
import { mkdir, open, readFile, truncate, type FileHandle } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { InputError } from '../exit-codes.ts';
import { replaceFile } from '../report-files.ts';
import { reasonOf } from '../scenario-file.ts';

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

export interface RowFiles {
  /** Rows that stand already. */
  readonly rows: number;
  readonly append: (csv: string, json: string) => Promise<void>;
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

export const sheetText = (sheet: Sheet): string => `${JSON.stringify(sheet, null, 2)}\n`;

export async function sheetAt(path: string): Promise<Sheet | undefined> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as Sheet;
  } catch {
    return undefined;
  }
}

const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined;

/** Runs something that writes to a path and says in plain words why it cannot. */
export async function writing<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const full = ['ENOSPC', 'EDQUOT'].includes(String(codeOf(error)));
    throw new InputError(
      full
        ? `${path}: cannot write, the disk is full. The rows written so far stand; make room and go on with --resume.`
        : `${path}: cannot write, ${reasonOf(error)}.`,
    );
  }
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

/** Rows that stand whole in both files. */
export async function rowsStanding({ csv, json }: RowPaths): Promise<number> {
  const [table, lines] = await Promise.all([wholeLines(csv), wholeLines(json)]);
  return Math.max(0, Math.min(table.lines - 1, lines.lines));
}

/** Begins the files of a sweep anew, or opens those there are behind the rows that stand. */
export async function openRowFiles(
  folder: string,
  sheet: Sheet,
  header: string,
  resume: boolean,
): Promise<RowFiles> {
  const paths = rowPaths(folder, sheet.shard);
  await writing(folder, () => mkdir(folder, { recursive: true }));
  const found = await sheetAt(paths.sheet);
  const standing = found === undefined ? 0 : await rowsStanding(paths);
  if (!resume && found && standing > 0 && standing < enginesIn(found.shard, found.engines))
    throw unfinished(paths, found, standing);
  if (resume && found && standing > 0 && found.fingerprint !== sheet.fingerprint) throw anotherStudy(paths);
  const rows = resume && found?.fingerprint === sheet.fingerprint ? standing : 0;
  const cut = async (path: string, lines: number): Promise<void> => {
    const { end } = lines === 0 ? { end: 0 } : await wholeLines(path, lines);
    await writing(path, () => truncate(path, end));
  };
  const [csv, json] = [await opened(paths.csv), await opened(paths.json)];
  await cut(paths.csv, rows === 0 ? 0 : rows + 1);
  await cut(paths.json, rows);
  await replaceFile(folder, basename(paths.sheet), sheetText(sheet));
  if (rows === 0) await writing(paths.csv, () => csv.appendFile(header));
  return {
    rows,
    append: async (table, lines) => {
      await writing(paths.csv, () => csv.appendFile(table));
      await writing(paths.json, () => json.appendFile(lines));
    },
    close: async () => {
      await Promise.all([csv.close(), json.close()]);
    },
  };
}

const opened = (path: string): Promise<FileHandle> => writing(path, () => open(path, 'a'));

function unfinished(paths: RowPaths, { engines, shard }: Sheet, standing: number): InputError {
  return new InputError(
    `${paths.csv}: holds ${standing} of ${enginesIn(shard, engines)} engines of a sweep that was stopped. ` +
      'Go on with --resume, or take the file away to begin anew.',
  );
}

const anotherStudy = (paths: RowPaths): InputError =>
  new InputError(
    `${paths.csv}: its rows belong to another study, or the study or its scenario has changed since. ` +
      'Take the file away to begin anew, or write somewhere else with --out.',
  );
