/** The disk fails, the program is killed, somebody else writes too: nothing half-written looks whole, nothing is lost. */
import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, scenario, tickover, type Said } from '../end-to-end/command.ts';
import { read, rowsOf, toyStudy, twelve } from '../end-to-end/studies/toy.ts';
import { contentsOf, expectOnlyWhole, failing, main, type Contents } from './half-way.ts';
import { measured, somebodyElseMayRunIt } from './measured.ts';

const disc = scenario('cider-press-disc.yaml');
/** Writes much and reckons little. */
const draw = ['draw', 'disc.yaml', '--out', 'out'] as const;

function drawn(title: string): string {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'disc.yaml'), readFileSync(disc, 'utf8').replace(/(?<=^title: ).*$/mu, title));
  tickover(folder, ...draw);
  return folder;
}
const first = drawn('Before');
const second = drawn('After');

/** A folder with the drawings of the engine under another title, and what stands in it. */
function begun(): { readonly folder: string; readonly earlier: Contents } {
  const folder = emptyFolder();
  cpSync(first, folder, { recursive: true });
  cpSync(join(second, 'disc.yaml'), join(folder, 'disc.yaml'));
  return { folder, earlier: contentsOf(join(folder, 'out')) };
}
const later = contentsOf(join(second, 'out'));
/** Each file is written and renamed. */
const steps = 2 * later.size;

/** With ATTACKS set every one of them; else the first and the last of writing and of renaming, and some commands. */
const all = process.env['ATTACKS'] !== undefined;
const tried = Array.from({ length: steps }, (_, i) => i + 1).filter(
  (at) => all || [1, steps / 2, steps / 2 + 1, steps].includes(at),
);

describe('killed at every write and every renaming of drawings', () => {
  it.each(tried)('number %i', (at) => {
    const { folder, earlier } = begun();
    expect(failing(folder, at, 'SIGKILL', ...draw).signal).toBe('SIGKILL');
    const left = contentsOf(join(folder, 'out'));
    expect(left.size, 'something was left').toBeGreaterThan(earlier.size);
    expectOnlyWhole(left, earlier, later);
    for (const name of earlier.keys()) expect(left.has(name), name).toBe(true);
    // Until all are whole, the earlier ones stand as they were.
    if (at <= steps / 2) expectOnlyWhole(left, earlier);
  });
});

describe('a disk that fails', () => {
  it.each([
    [1, 'ENOSPC', 'the disk is full; make room'],
    [steps / 2, 'ENOSPC', 'the disk is full; make room'],
    [2, 'EIO', 'EIO: said by a test'],
    [steps / 2 + 1, 'EROFS', 'nothing may be written there, the disk is read-only'],
  ])('at number %i with %s: the earlier files stand, and nothing else', (at, how, words) => {
    const { folder, earlier } = begun();
    const said = failing(folder, at, how, ...draw);
    expect([said.status, said.stdout]).toEqual([2, '']);
    expect(said.stderr).toMatch(new RegExp(`^out/[a-z-]+\\.[a-z]+: cannot write, ${words}[^\\n]*\\n$`, 'u'));
    expect(contentsOf(join(folder, 'out'))).toEqual(earlier);
  });

  it('is full for good', (context) => {
    const { folder } = begun();
    rmSync(join(folder, 'out'), { recursive: true });
    const small = join(folder, 'out');
    mkdirSync(small);
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', small]).status !== 0)
      context.skip('a small disk can only be mounted by root');
    try {
      const said = tickover(folder, ...draw);
      expect([said.status, said.stdout]).toEqual([2, '']);
      expect(said.stderr).toContain('the disk is full; make room and run it again.');
      expect(readdirSync(small)).toEqual([]);
    } finally {
      spawnSync('umount', [small]);
    }
  });

  it('takes no file that large', () => {
    const { folder, earlier } = begun();
    const limited = `ulimit -f 4 && exec "$@"`;
    const said = spawnSync('bash', ['-c', limited, 'bash', process.execPath, main, ...draw], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect([said.status, said.stdout]).toEqual([2, '']);
    expect(said.stderr).toMatch(
      /^out\/[a-z-]+\.[a-z]+: cannot write, it would be larger than files may be here\.\n$/u,
    );
    expect(contentsOf(join(folder, 'out'))).toEqual(earlier);
  });

  it('may not be written to', (context) => {
    if (!somebodyElseMayRunIt()) context.skip('as root every folder may be written to');
    const folder = emptyFolder();
    cpSync(disc, join(folder, 'disc.yaml'));
    chmodSync(folder, 0o555);
    const { status, stderr } = measured(folder, ['run', 'disc.yaml', '--out', 'out'], true);
    expect([status, stderr]).toEqual([2, 'out: cannot write, nothing may be written there.\n']);
  });
});

describe('the other commands that write, killed half way', () => {
  const study = toyStudy(
    `${twelve}odds:\n  engines: 10\n  tolerances:\n    - kind: spread\n      setting: cylinder.bore\n      plus_minus: 0.01 mm\n`,
  );
  const commands: readonly (readonly [name: string, at: number, args: readonly string[]])[] = [
    ['run', 3, ['run', disc, '--out', 'out']],
    ['bench', 1, ['bench', scenario('bench/coast-down.yaml'), '--out', 'out']],
    ['odds', 1, ['odds', join(study, 'study.yaml'), '--out', 'out', '--quiet']],
    ['supply', 2, ['supply', scenario('cider-press.yaml'), '--out', 'out']],
    ['compare', 2, ['compare', disc, scenario('cider-press.yaml'), '--out', 'out']],
    ['why', 2, ['why', disc, '--symptom', 'hisses-at-rest', '--out', 'out']],
    ['attempts', 2, ['attempts', scenario('bench/attempts.yaml'), '--out', 'out']],
    ['limit', 2, ['limit', scenario('studies/press-widest-clearance.yaml'), '--out', 'out']],
    ['best', 2, ['best', scenario('studies/press-best-cut-off.yaml'), '--out', 'out']],
  ];
  it.each(commands.slice(0, all ? undefined : 3))('%s leaves no file under its name', (_name, at, args) => {
    const folder = emptyFolder();
    expect(failing(folder, at, 'SIGKILL', ...args).signal).toBe('SIGKILL');
    const left = [...contentsOf(join(folder, 'out')).keys()];
    expect(left.filter((name) => name.endsWith('.part')).length).toBeGreaterThan(0);
    expect(left.filter((name) => !name.endsWith('.part'))).toEqual([]);
  });

  it('new leaves an empty file at most, and never writes over one', () => {
    const folder = emptyFolder();
    const args = ['new', 'mine.yaml', '--gear', 'rotary disc'];
    expect(failing(folder, 2, 'SIGKILL', ...args).signal).toBe('SIGKILL');
    expect(readFileSync(join(folder, 'mine.yaml'), 'utf8')).toBe('');
    expect(tickover(folder, ...args).stderr).toBe('mine.yaml: there already; nothing was written over.\n');
    rmSync(join(folder, 'mine.yaml'));
    expect(failing(folder, 2, 'ENOSPC', ...args).stderr).toContain('the disk is full');
    expect(existsSync(join(folder, 'mine.yaml'))).toBe(false);
  });
});

describe('two at a time', () => {
  const spawned = (cwd: string, args: readonly string[]): Promise<Said> =>
    new Promise((resolve) => {
      const child = spawn(process.execPath, [main, ...args], { cwd });
      let [stdout, stderr] = ['', ''];
      child.stdout.on('data', (chunk: Buffer) => (stdout += chunk.toString()));
      child.stderr.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
      child.on('close', (status) => resolve({ status, stdout, stderr }));
    });

  it('drawings into one folder: each file is of one of them', async () => {
    const { folder } = begun();
    cpSync(join(first, 'disc.yaml'), join(folder, 'other.yaml'));
    const both = await Promise.all([
      spawned(folder, draw),
      spawned(folder, ['draw', 'other.yaml', '--out', 'out']),
    ]);
    expect(both.map(({ status, stderr }) => [status, stderr])).toEqual([
      [0, ''],
      [0, ''],
    ]);
    const found = contentsOf(join(folder, 'out'));
    expect([...found.keys()].sort()).toEqual([...later.keys()].sort());
    expectOnlyWhole(found, later, contentsOf(join(first, 'out')));
  });

  it('sweeps into one folder: one of them is refused, the other is right; Ctrl-C keeps the rows', async () => {
    const folder = toyStudy(twelve);
    const args = ['sweep', 'study.yaml', '--workers', '1', '--quiet', '--out'];
    tickover(folder, ...args, 'whole');
    const child = spawn(process.execPath, [main, ...args, 'out'], { cwd: folder });
    const ended = new Promise((resolve) => child.on('close', resolve));
    const csv = join(folder, 'out/sweep.csv.part');
    while (!(existsSync(csv) && rowsOf(readFileSync(csv, 'utf8')).length > 2) && child.exitCode === null)
      await new Promise((resolve) => setTimeout(resolve, 2));
    child.kill('SIGSTOP');
    const refused = tickover(folder, ...args, 'out', '--resume');
    child.kill('SIGCONT');
    child.kill('SIGINT');
    expect(await ended).toBe(130);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toMatch(/^out\/sweep\.lock: another sweep is writing here \(process \d+\)\./u);
    expect(readdirSync(join(folder, 'out')).every((name) => name.endsWith('.part'))).toBe(true);
    expect(tickover(folder, ...args, 'out').stderr).toMatch(/stopped\. Go on with --resume|^$/u);
    tickover(folder, ...args, 'out', '--resume');
    for (const name of ['sweep.csv', 'sweep.jsonl', 'sweep.html', 'sweep.study.json'])
      expect(read(folder, `out/${name}`), name).toBe(read(folder, `whole/${name}`));
  });
});
