/** Builds the C programs beside this file, or says why they cannot be built here. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const FLAGS = ['-O3', '-march=native', '-std=c11', '-Wall', '-Wextra'];
const SHARED = ['engine.c', 'angle-table.c', 'read.c'];
const SUNDIALS = ['cvode', 'nvecserial', 'sunmatrixdense', 'sunlinsoldense'].map(
  (part) => `-lsundials_${part}`,
);

export type Built =
  { readonly ok: true; readonly path: string } | { readonly ok: false; readonly why: string };

function built(sources: string, target: string, main: string, libraries: readonly string[]): Built {
  const path = join(target, main.replace('.c', ''));
  const files = [main, ...SHARED].map((file) => join(sources, file));
  const done = spawnSync('cc', [...FLAGS, '-o', path, ...files, ...libraries, '-lm'], { encoding: 'utf8' });
  if (done.error) return { ok: false, why: `no C compiler: ${done.error.message}` };
  return done.status === 0 ? { ok: true, path } : { ok: false, why: done.stderr.trim() };
}

/** The derivative alone. */
export const buildSlopes = (sources: string, target: string): Built => built(sources, target, 'slopes.c', []);

/** Start-ups with CVODE; needs Debian's libsundials-dev. */
export function buildStartUp(sources: string, target: string): Built {
  const start = built(sources, target, 'start-up.c', SUNDIALS);
  if (start.ok || !/sundials|cvode/.test(start.why)) return start;
  return { ok: false, why: 'SUNDIALS is not installed: apt-get install libsundials-dev' };
}

/** What a program prints: rows of numbers; undefined when it ends with a failure. */
export function numbersOf(program: string, ...words: readonly (string | number)[]): number[][] | undefined {
  const done = spawnSync(program, words.map(String), { encoding: 'utf8', maxBuffer: 1e8 });
  if (done.status !== 0) return undefined;
  const rows = done.stdout.trim().split('\n');
  return rows.map((row) => row.trim().split(/\s+/).map(Number));
}
