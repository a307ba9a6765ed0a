/** The same scenario gives the same bytes: again, elsewhere, at another time, with its keys in another order. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isMap, parseDocument, visit } from 'yaml';
import { randomFrom } from '../../src/study/random.ts';
import { emptyFolder, projectRoot, tickover } from './command.ts';
import { toyStudy, twelve } from './studies/toy.ts';

const main = join(projectRoot, 'dist/cli/main.js');
const shipped = join(projectRoot, 'scenarios');

/** A clock that goes backwards, and random numbers that are none. */
const oddTimes =
  'const now = Date.now; let back = 0; Date.now = () => now() - (back += 1e9); Math.random = () => 0.5;';

/** What another machine might be set to. */
const elsewhere = {
  TZ: 'Pacific/Kiritimati',
  LANG: 'tr_TR.UTF-8',
  LC_ALL: 'tr_TR.UTF-8',
  NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(oddTimes)}`,
  HOME: '/nonexistent',
  TMPDIR: '/nonexistent',
};

/** The keys of every group in another order. */
function shuffled(text: string): string {
  const random = randomFrom(1);
  const document = parseDocument(text);
  visit(document, {
    Map: (_key, node) => {
      node.items = node.items
        .map((item) => ({ item, at: random() }))
        .sort((a, b) => a.at - b.at)
        .map(({ item }) => item);
    },
  });
  expect(isMap(document.contents)).toBe(true);
  return document.toString().replaceAll('\n', '\r\n');
}

const filesIn = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => statSync(join(folder, name)).isFile())
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), 'latin1')]),
  );

function expectSame(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): void {
  expect([...b.keys()]).toEqual([...a.keys()]);
  for (const [name, bytes] of a) expect(b.get(name) === bytes, `${name} is the same`).toBe(true);
}

describe('the same scenario, the same bytes', () => {
  const press = readFileSync(join(shipped, 'cider-press.yaml'), 'utf8');
  const commands = [
    ['run', 'press.yaml'],
    ['draw', 'press.yaml'],
    ['bench', 'bench/coast-down.yaml'],
    ...(process.env['ATTACKS'] === undefined
      ? []
      : [
          ['run', 'geared.yaml'],
          ['supply', 'press.yaml'],
          ['attempts', 'bench/attempts.yaml'],
          ['why', 'press.yaml', '--symptom', 'hisses-at-rest'],
        ]),
  ];

  function written(
    folder: string,
    change: (text: string) => string,
    env: Readonly<Record<string, string>>,
  ): { readonly files: ReadonlyMap<string, string>; readonly said: readonly string[] } {
    mkdirSync(folder, { recursive: true });
    cpSync(join(shipped, 'bench'), join(folder, 'bench'), { recursive: true });
    writeFileSync(join(folder, 'press.yaml'), change(press));
    writeFileSync(
      join(folder, 'geared.yaml'),
      change(readFileSync(join(shipped, 'apple-washer-geared-disc.yaml'), 'utf8')),
    );
    const said = commands.map((args) => {
      const { status, stdout, stderr } = spawnSync(process.execPath, [main, ...args], {
        cwd: folder,
        encoding: 'utf8',
        env: { ...process.env, NO_COLOR: '1', ...env },
      });
      expect([status, stderr], args.join(' ')).toEqual([0, '']);
      return stdout;
    });
    return { files: filesIn(join(folder, 'reports')), said };
  }

  it('whatever the time, the place, the language and the order of keys', () => {
    const here = written(emptyFolder(), (text) => text, {});
    const there = written(join(emptyFolder(), 'Büro', 'a b'), shuffled, elsewhere);
    expect(there.said).toEqual(here.said);
    expectSame(here.files, there.files);
    expect(here.files.size).toBeGreaterThan(10);
  });
});

it.each([
  ['sweep', twelve],
  [
    'odds',
    'odds:\n  engines: 10\n  tolerances:\n    - kind: spread\n      setting: cylinder.bore\n      plus_minus: 0.1 mm\n',
  ],
])('%s writes the same bytes with one worker and with eight', (command, study) => {
  const folder = toyStudy(study);
  for (const workers of ['1', '8']) {
    const said = tickover(folder, command, 'study.yaml', '--out', workers, '--workers', workers);
    expect([said.status, said.stderr]).toEqual([0, '']);
  }
  expectSame(filesIn(join(folder, '1')), filesIn(join(folder, '8')));
});
