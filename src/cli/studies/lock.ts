/**
 * One sweep at a time writes into its files: while it does, a file beside them says who. That of a sweep that was killed is
 * no hindrance. Between machines nobody can tell whether the other is alive; there the queue sees to it.
 */
import { readFile, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { writing } from '../aside.ts';
import { InputError } from '../exit-codes.ts';
import { codeOf } from '../reasons.ts';

const own = `${process.pid} ${hostname()}\n`;

/** Takes the lock and returns what gives it back. */
export async function lock(path: string): Promise<() => Promise<void>> {
  await writing(path, () => take(path));
  return () => rm(path, { force: true });
}

async function take(path: string): Promise<void> {
  for (;;) {
    try {
      await writeFile(path, own, { flag: 'wx' });
      return;
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw error;
    }
    const [process = '', host = ''] = (await readFile(path, 'utf8').catch(() => '')).trim().split(' ');
    if (host === hostname() && isAlive(Number(process)))
      throw new InputError(
        `${path}: another sweep is writing here (process ${process}). Wait for it, or write somewhere else with --out. ` +
          'If that process is something else, take this file away.',
      );
    await rm(path, { force: true });
  }
}

function isAlive(id: number): boolean {
  if (!Number.isInteger(id) || id <= 0) return false;
  try {
    return process.kill(id, 0);
  } catch (error) {
    // Somebody else's, but alive.
    return codeOf(error) === 'EPERM';
  }
}
