/** Nothing is sent and nothing is fetched: by the command, by its workers, by what it writes. */
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, projectRoot, scenario } from '../end-to-end/command.ts';
import { toyStudy, twelve } from '../end-to-end/studies/toy.ts';

const main = join(projectRoot, 'dist/cli/main.js');
const guard = join(projectRoot, 'tests/attacks/no-network.cjs');
const guarded = { ...process.env, NODE_OPTIONS: `--require ${JSON.stringify(guard)}` };

const inDist = (folder: string): string[] =>
  readdirSync(join(projectRoot, 'dist', folder), { encoding: 'utf8' })
    .filter((name) => name.endsWith('.js'))
    .map((name) => readFileSync(join(projectRoot, 'dist', folder, name), 'utf8'));

describe('with every way into the network made to fail', () => {
  it.each<[string, readonly string[]]>([
    ['run', ['run', scenario('cider-press-disc.yaml')]],
    ['draw', ['draw', scenario('cider-press-disc.yaml')]],
    ['bench', ['bench', scenario('bench/coast-down.yaml')]],
  ])('%s does its work', (_name, args) => {
    const said = spawnSync(process.execPath, [main, ...args], {
      cwd: emptyFolder(),
      env: guarded,
      encoding: 'utf8',
    });
    expect([said.status, said.stderr]).toEqual([0, '']);
  });

  it('so do the workers of a sweep', () => {
    const folder = toyStudy(twelve);
    const said = spawnSync(process.execPath, [main, 'sweep', 'study.yaml', '--workers', '2'], {
      cwd: folder,
      env: guarded,
      encoding: 'utf8',
    });
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(readFileSync(join(folder, 'reports/study/sweep.csv'), 'utf8')).not.toContain('broken-off');
  });

  it.each([
    'fetch("http://127.0.0.1")',
    'import("node:https").then((own) => own.get("https://127.0.0.1"))',
    'import("node:net").then(({ Socket }) => new Socket().connect(9))',
    'import("node:dns/promises").then(({ lookup }) => lookup("localhost"))',
    'new (require("node:worker_threads").Worker)("fetch(\'http://127.0.0.1\')", { eval: true })',
  ])('whoever reaches for it is found: %s', (program) => {
    const { stderr } = spawnSync(process.execPath, ['--eval', program], { env: guarded, encoding: 'utf8' });
    expect(stderr).toContain('reached for the network');
  });
});

it('without any network a run is as good', (context) => {
  const alone = ['--net', '--map-root-user'];
  if (spawnSync('unshare', [...alone, 'true']).status !== 0)
    context.skip('this system lets nobody leave the network (unshare)');
  const said = spawnSync(
    'unshare',
    [...alone, process.execPath, main, 'run', scenario('cider-press-disc.yaml'), '--quiet'],
    { cwd: emptyFolder(), encoding: 'utf8' },
  );
  expect([said.status, said.stdout, said.stderr]).toEqual([0, '', '']);
});

describe('what is built', () => {
  const harmless = [
    ...['assert', 'buffer', 'crypto', 'events', 'fs', 'fs/promises', 'module', 'os', 'path', 'process'],
    ...['readline', 'url', 'util', 'v8', 'worker_threads'],
  ];

  it('imports nothing of Node that leads outside', () => {
    const imported = inDist('cli').flatMap((text) =>
      [...text.matchAll(/(?:\bfrom |\bimport |\b__require\(|\bimport\()"([^"]+)"/gu)].map(([, name = '']) =>
        name.replace(/^node:/u, ''),
      ),
    );
    const foreign = new Set(
      imported.filter((name) => /^[a-z][\w/-]*$/u.test(name) && !harmless.includes(name)),
    );
    expect([...foreign]).toEqual([]);
    expect(imported).toContain('fs/promises');
  });

  it('names no way into the network, the script of the reports included', () => {
    for (const text of [...inDist('cli'), ...inDist('report')])
      expect(text).not.toMatch(/\bfetch\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts/u);
  });
});
