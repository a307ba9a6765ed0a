/** The built command handed what is no scenario, and command lines nobody means. */
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, projectRoot, scenario } from '../end-to-end/command.ts';
import { expectGoodEnd, expectRefused, measured, somebodyElseMayRunIt } from './measured.ts';
import { mutantOf } from './mutations.ts';

const SAMPLE = Number(process.env['ATTACKED_COMMANDS'] ?? 6);

const folder = emptyFolder();
const press = readFileSync(scenario('cider-press.yaml'), 'utf8');
const put = (name: string, bytes: string | Uint8Array): void => writeFileSync(join(folder, name), bytes);
const check = (file: string, asNobody = false): string => {
  const stderr = expectRefused(measured(folder, ['check', file], asNobody));
  return stderr.replace(`${file}: `, '');
};

describe('what is no scenario', () => {
  it('a pipe, which would keep us waiting', () => {
    spawnSync('mkfifo', [join(folder, 'pipe.yaml')]);
    expect(check('pipe.yaml')).toBe('cannot read this scenario, it is not a file.\n');
  });

  it('a device without end', () => {
    expect(check('/dev/zero')).toBe('cannot read this scenario, it is not a file.\n');
  });

  it('a folder', () => {
    mkdirSync(join(folder, 'folder.yaml'));
    expect(check('folder.yaml')).toBe('cannot read this scenario, it is a folder, not a file.\n');
  });

  it('links in a circle', () => {
    symlinkSync('b.yaml', join(folder, 'a.yaml'));
    symlinkSync('a.yaml', join(folder, 'b.yaml'));
    expect(check('a.yaml')).toBe('cannot read this scenario, its links go round in a circle.\n');
  });

  it('a file that may not be read', (context) => {
    if (!somebodyElseMayRunIt())
      context.skip('as root everything may be read, and nobody else may read this folder');
    put('secret.yaml', press);
    chmodSync(folder, 0o755);
    chmodSync(join(folder, 'secret.yaml'), 0o000);
    expect(check('secret.yaml', true)).toBe('cannot read this scenario, it may not be read.\n');
  });

  it('a name that is too long, or none at all', () => {
    expect(check(`${'x'.repeat(300)}.yaml`)).toContain('the name is too long');
    expect(check('')).toContain('there is no such file');
  });

  const contents: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['fifty megabytes', Buffer.alloc(50e6, 'a'), /cannot read this scenario, it holds 50\.0 MB/u],
    ['three megabytes in lines', 'a: 1\n'.repeat(600_000), /at most 1 million characters/u],
    ['one line', `title: ${'x'.repeat(900_000)}`, /lines of at most 1000 characters/u],
    ['nothing', '', /received an empty file/u],
    [
      'UTF-16',
      Buffer.from(`\ufeff${press}`, 'utf16le'),
      /cannot read this scenario, it is not UTF-8 text; save it/u,
    ],
    [
      'UTF-16 without a mark',
      Buffer.from(press, 'utf16le'),
      /:1:2 {2}expected text, received a control character \(U\+0000\)/u,
    ],
    ['Latin-1', Buffer.from(press.replace('title: ', 'title: café '), 'latin1'), /not UTF-8 text/u],
    [
      'a NUL in a value',
      press.replace('50 mm', '5\u00000 mm'),
      /expected text, received a control character/u,
    ],
    ['line ends of long ago', press.replaceAll('\n', '\r'), /control character \(U\+000D\).*line ends/u],
    [
      'a function',
      press.replace('bore: 50 mm', 'bore: !!js/function "return 1"'),
      /plain values without tags/u,
    ],
    ['aliases upon aliases', `a: &a [x,x]\nb: &b [${'*a,'.repeat(30)}]\n${press}`, /at most 20 aliases/u],
    ['keys that merge', `${press}\nbase: &base\n  bore: 1 mm\nload:\n  <<: *base`, /the unknown key "base"/u],
    ['two documents', `${press}---\n${press}`, /one description in a file/u],
    ['a key twice', press.replace('bore: 50 mm', 'bore: 50 mm\n  bore: 51 mm'), /each key once/u],
    ['brackets without end', `title: ${'['.repeat(900)}`, /levels of nesting|closing|valid YAML/u],
  ];
  const fileOf = (name: string): string => `${name.replaceAll(' ', '-')}.yaml`;

  it('whatever it holds', () => {
    for (const [name, bytes] of contents) put(fileOf(name), bytes);
    const lines = expectRefused(measured(folder, ['check', ...contents.map(([name]) => fileOf(name))])).split(
      '\n',
    );
    for (const [name, , text] of contents)
      expect(lines.filter((line) => line.startsWith(fileOf(name))).join('\n'), name).toMatch(text);
  });

  it('a table that a link puts beside the scenario', () => {
    put('engine.yaml', readFileSync(scenario('grindstone-tabulated.yaml')));
    symlinkSync('/etc/passwd', join(folder, 'grindstone-port-areas.csv'));
    expect(check('engine.yaml')).toContain("only files in the scenario's folder or below it are read");
  });
});

describe('files that are taken', () => {
  it.each<[string, string]>([
    ['with a mark at the beginning', `\ufeff${press}`],
    ['with the line ends of Windows', press.replaceAll('\n', '\r\n')],
  ])('%s', (_name, text) => {
    put('taken.yaml', text);
    expectGoodEnd(measured(folder, ['check', 'taken.yaml']), [0]);
  });
});

describe('spoilt files', () => {
  const root = join(projectRoot, 'scenarios');
  cpSync(root, join(folder, 'shipped'), { recursive: true });
  const names = readdirSync(root).filter((name) => name.endsWith('.yaml'));

  it.each(Array.from({ length: SAMPLE }, (_, i) => i * 1009))('end well: seed %i', (seed) => {
    const name = names[seed % names.length]!;
    put('shipped/mutant.yaml', mutantOf(readFileSync(join(root, name), 'utf8'), seed).bytes);
    expectGoodEnd(measured(folder, ['check', 'shipped/mutant.yaml']));
  });
});

describe('command lines nobody means', () => {
  put('press.yaml', press);
  it.each<[string, readonly string[]]>([
    ['Not enough arguments following: set', ['run', 'press.yaml', '--set']],
    ['Say --out once only.', ['run', 'press.yaml', '--out', 'a', '--out', 'b']],
    ['Unknown argument: constructor', ['run', 'press.yaml', '--constructor', '1']],
    ['Unknown argument: __proto__.x', ['run', 'press.yaml', '--__proto__.x=1']],
    ['Unknown arguments: no-out', ['run', 'press.yaml', '--no-out']],
    ['--workers: expected a whole number from 1 to 256; found 0.', ['sweep', 'press.yaml', '--workers', '0']],
    [
      '--workers: expected a whole number from 1 to 256; found no number.',
      ['next', 'press.yaml', '--workers', 'all'],
    ],
    ['Unknown argument: \uFFFD[2J', ['check', 'press.yaml', '--\u001b[2J']],
    ['--set cylinder.bore=\uFFFD[2J50 mm', ['run', 'press.yaml', '--set', 'cylinder.bore=\u001b[2J50 mm']],
  ])('%s', (text, args) => {
    expect(expectGoodEnd(measured(folder, args), [2])).toContain(text);
  });
});
