/** The built command with its time and its memory. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect } from 'vitest';
import { projectRoot, type Said } from '../end-to-end/command.ts';
import { formFaults } from './said.ts';

const main = join(projectRoot, 'dist/cli/main.js');

export interface Measured extends Said {
  readonly signal: NodeJS.Signals | null;
  readonly seconds: number;
  /** Most memory it ever had; NaN when it did not come to its end. */
  readonly megabytes: number;
}

/** Loaded before the command; what it writes at the end is taken off again. */
const probe =
  'process.on("exit", () => process.stderr.write(`\\nmemory ${process.resourceUsage().maxRSS / 1024}`))';

/** Nobody in particular, where we are root and may read everything. */
const NOBODY = 65534;

const somebodyElse = (): { uid?: number; gid?: number } =>
  process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};

/** For trying what only root may do otherwise. */
export const somebodyElseMayRunIt = (): boolean =>
  spawnSync(process.execPath, [main, '--version'], somebodyElse()).status === 0;

export function measured(cwd: string, args: readonly string[], asNobody = false): Measured {
  const begun = performance.now();
  const as = asNobody ? somebodyElse() : {};
  const { status, signal, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(probe)}`, main, ...args],
    { cwd, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' }, timeout: 30_000, stdio: 'pipe', ...as },
  );
  const [said = '', memory = 'NaN'] = stderr.split('\nmemory ');
  const seconds = (performance.now() - begun) / 1000;
  return { status, signal, stdout, stderr: said, seconds, megabytes: Number(memory) };
}

/** The ends that a file of somebody else's may lead to; returns what was said. */
export function expectGoodEnd(said: Measured, statuses: readonly number[] = [0, 2]): string {
  const { status, signal, stdout, stderr, seconds, megabytes } = said;
  expect(signal, stderr).toBe(null);
  expect(statuses, stderr).toContain(status);
  expect(stdout + stderr).not.toMatch(/\n\s+at |\bNaN\b|undefined|\[object/u);
  expect(seconds).toBeLessThan(5);
  expect(megabytes).toBeLessThan(512);
  if (status === 2) expect(stdout).toBe('');
  return stderr;
}

/** Refused with place and cure. */
export function expectRefused(said: Measured): string {
  const stderr = expectGoodEnd(said, [2]);
  expect(formFaults(stderr.trimEnd())).toEqual([]);
  return stderr;
}
