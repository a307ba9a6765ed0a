/** Runs the built command as a user does, in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));
const main = join(projectRoot, 'dist/cli/main.js');

export interface Said {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'tickover-test-'));

export function tickover(cwd: string, ...args: string[]): Said {
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...args], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
    maxBuffer: 2 ** 26,
    timeout: 60_000,
  });
  return { status, stdout, stderr };
}

export const scenario = (name: string): string => join(projectRoot, 'scenarios', name);
