/** A file of rows that is begun anew, row after row; a row waits for those before it. */
import { mkdir, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { writing } from './row-files.ts';

export interface RowFile {
  readonly path: string;
  readonly add: (row: string) => void;
  /** Tells of anything that went wrong on the way. */
  readonly close: () => Promise<void>;
}

export async function rowFile(path: string, header: string): Promise<RowFile> {
  const file = await writing(path, async () => {
    await mkdir(dirname(path), { recursive: true });
    return open(path, 'w');
  });
  let written = file.appendFile(header);
  written.catch(() => undefined);
  return {
    path,
    add: (row) => {
      written = written.then(() => file.appendFile(row));
      written.catch(() => undefined);
    },
    close: async () => {
      try {
        await writing(path, () => written);
      } finally {
        await file.close();
      }
    },
  };
}
