/** A sweep on a terminal, by way of `script` of util-linux, shows how far it is; in a pipe it says nothing of that. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { emptyFolder, projectRoot, scenario, tickover } from '../command.ts';

const vary = ['--vary', 'supply.pressure = 2.5 bar gauge to 3.5 bar gauge in 300'];

it('shows how many engines, rate and time left', () => {
  const folder = emptyFolder();
  const main = join(projectRoot, 'dist/cli/main.js');
  const words = [process.execPath, main, 'sweep', scenario('cider-press.yaml'), ...vary, '--out', 'swept'];
  const line = words.map((word) => `'${word}'`).join(' ');
  const { stdout, status } = spawnSync('script', ['-qec', line, '/dev/null'], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, TERM: 'xterm', COLUMNS: '100' },
    timeout: 60_000,
  });
  expect(status).toBe(0);
  expect(stdout).toMatch(/\d+ of 300 engines · \d+(\.\d)? a second · \d+ s left/u);
  expect(stdout).not.toMatch(/NaN|Infinity/u);
});

it('is quiet in a pipe', () => {
  const { stdout, stderr } = tickover(
    emptyFolder(),
    'sweep',
    scenario('cider-press.yaml'),
    ...vary,
    '--out',
    'swept',
  );
  expect(stdout + stderr).not.toContain('a second');
  expect(stdout).not.toContain('\u001b');
});
