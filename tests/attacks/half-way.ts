/** The built command on a disk that fails it half way, and what then stands in a folder. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect } from 'vitest';
import { projectRoot, type Said } from '../end-to-end/command.ts';

export const main = join(projectRoot, 'dist/cli/main.js');
const failingDisk = pathToFileURL(join(projectRoot, 'tests/attacks/failing-disk.mjs')).href;

interface Ended extends Said {
  readonly signal: NodeJS.Signals | null;
}

export function failing(cwd: string, at: number, how: string, ...args: readonly string[]): Ended {
  const { status, signal, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', failingDisk, main, ...args],
    {
      cwd,
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, FAILS_AT: String(at), FAILS_WITH: how },
    },
  );
  return { status, signal, stdout, stderr };
}

export type Contents = ReadonlyMap<string, string>;

export const contentsOf = (folder: string): Contents =>
  new Map(
    (existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [])
      .filter((name) => statSync(join(folder, name)).isFile())
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );

export const inFull = ([name]: readonly [string, string]): boolean => !name.endsWith('.part');

/** Every file is one of an earlier or of a later state, whole; or its name says that it is not. */
export function expectOnlyWhole(found: Contents, ...states: readonly Contents[]): void {
  for (const [name, text] of [...found].filter(inFull))
    expect(
      states.some((state) => state.get(name) === text),
      `${name} is whole`,
    ).toBe(true);
}
