/**
 * Files that are written aside and put in place when they are whole, so that whatever ends the program, a name holds what
 * it held before or all that it should. What a killed run leaves behind ends in ".part".
 */
import { randomUUID } from 'node:crypto';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { InputError } from './exit-codes.ts';
import { whyUnwritten } from './reasons.ts';

/** Where a file is written until it is whole; a name of its own for each that writes it. */
export const asideOf = (path: string): string => `${path}.${randomUUID().slice(0, 8)}.part`;

/** Runs something that writes to a path and says in plain words why it cannot. */
export async function writing<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError(`${path}: cannot write, ${whyUnwritten(error)}.`);
  }
}

export const makeFolder = (folder: string): Promise<unknown> =>
  writing(folder, () => mkdir(folder, { recursive: true }));

/**
 * Writes files by their names into a folder, which is made if need be, and returns their paths. All are whole before the
 * first is put in place: on a disk that is full the earlier ones stay, all of them.
 */
export async function writeFiles(
  folder: string,
  files: readonly (readonly [name: string, text: string])[],
): Promise<string[]> {
  await makeFolder(folder);
  const all = files.map(([name, text]) => {
    const path = join(folder, name);
    return { path, aside: asideOf(path), text };
  });
  try {
    for (const { path, aside, text } of all)
      await writing(path, () => writeFile(aside, text, { flush: true, flag: 'wx' }));
    for (const { path, aside } of all) await writing(path, () => rename(aside, path));
  } catch (error) {
    await Promise.all(all.map(({ aside }) => rm(aside, { force: true })));
    throw error;
  }
  return all.map(({ path }) => path);
}
