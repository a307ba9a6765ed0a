/** A file of rows that is begun anew, row after row; a row waits for those before it. In place when it is whole. */
import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { asideOf, makeFolder, writing } from '../aside.ts';

/** Hands `work` what adds a row; the file is there when the work is done, and not at all when it fails. */
export async function withRowFile<T>(
  path: string,
  header: string,
  work: (add: (row: string) => void) => Promise<T>,
): Promise<T> {
  await makeFolder(dirname(path));
  const aside = asideOf(path);
  const file = await writing(path, () => open(aside, 'wx'));
  try {
    let written = file.appendFile(header);
    written.catch(() => undefined);
    const done = await work((row) => {
      written = written.then(() => file.appendFile(row));
      written.catch(() => undefined);
    });
    await writing(path, async () => {
      await written;
      await file.sync();
      await rename(aside, path);
    });
    return done;
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  } finally {
    await file.close();
  }
}
