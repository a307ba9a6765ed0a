/** `tickover sweep` and `merge` from outside: rows, the same bytes in any way of running, and what survives. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot, scenario, tickover } from '../command.ts';
import { read, rowsOf, toyStudy, twelve } from './toy.ts';

const main = join(projectRoot, 'dist/cli/main.js');
const folder = toyStudy(twelve);
const whole = tickover(folder, 'sweep', 'study.yaml', '--out', 'whole', '--workers', '2');
const files = ['sweep.csv', 'sweep.jsonl', 'sweep.html', 'sweep.study.json'];

const expectSame = (out: string, names = files): void => {
  for (const name of names) expect(read(folder, `${out}/${name}`), name).toBe(read(folder, `whole/${name}`));
};

describe('a sweep', () => {
  it('has a row for each engine, in order, units in the headers, failed ones with their reason', () => {
    expect(whole.stderr).toBe('');
    expect(whole.status).toBe(0);
    const [header, ...rows] = rowsOf(read(folder, 'whole/sweep.csv'));
    expect(header).toMatch(
      /^engine,supply\.pressure_bar_gauge,cylinder\.rod_length_mm,outcome,reason,holds,speed_rpm,/u,
    );
    expect(rows.map((row) => row.split(',')[0])).toEqual(Array.from({ length: 12 }, (_, i) => String(i + 1)));
    expect(rows[0]).toMatch(/^1,1,100,/u);
    expect(rows[2]).toMatch(/^3,1,20,impossible,"?cylinder\.rod_length: expected /u);
    expect(rows[9]).toMatch(/^10,3,100,settled,"It settles at /u);
    expect(whole.stdout).toMatch(/of 12 engines run/u);
  });

  it('has the same in JSON lines', () => {
    const lines = read(folder, 'whole/sweep.jsonl')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toHaveLength(12);
    expect(lines[10]).toMatchObject({
      engine: 11,
      settings: { 'supply.pressure': '3 bar gauge', 'cylinder.rod_length': '140 mm' },
      outcome: 'settled',
      holds: true,
    });
    expect(lines[2]).toMatchObject({ outcome: 'impossible', speed_rpm: null, holds: false });
  });

  it('is quiet in a pipe', () => {
    expect(whole.stdout + whole.stderr).not.toMatch(/[\u2588\u2591]/u);
  });

  it('gives the same bytes with one worker, in shards that are merged', () => {
    // The recipe of docs/studies.md for GNU parallel.
    const command = `${process.execPath} ${main} sweep study.yaml --out shards --workers 1 --quiet --resume --shard {}/2`;
    const shards = spawnSync('/usr/bin/parallel', ['-j2', command, ':::', '1', '2'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect([shards.status, shards.stdout]).toEqual([0, '']);
    const merged = tickover(folder, 'merge', 'shards');
    expect(merged.stderr).toBe('');
    expectSame('shards', ['sweep.csv', 'sweep.jsonl', 'sweep.study.json']);
    // All rows stand: nothing is run again, the page is made.
    expect(tickover(folder, 'sweep', 'study.yaml', '--out', 'shards', '--resume').stdout).toBe(
      whole.stdout.replaceAll('whole/', 'shards/'),
    );
    expectSame('shards');
  });
});

describe('a sweep that was stopped', () => {
  it('keeps every finished row through kill -9, and loses and repeats none', async () => {
    const running = spawn(
      process.execPath,
      [main, 'sweep', 'study.yaml', '--out', 'killed', '--workers', '1'],
      { cwd: folder },
    );
    const ended = new Promise((resolve) => running.on('exit', (_code, signal) => resolve(signal)));
    const csv = join(folder, 'killed/sweep.csv.part');
    const started = Date.now();
    while (
      Date.now() - started < 15_000 &&
      !(existsSync(csv) && rowsOf(read(folder, 'killed/sweep.csv.part')).length > 3)
    )
      await new Promise((resolve) => setTimeout(resolve, 2));
    running.kill('SIGKILL');
    expect(await ended).toBe('SIGKILL');
    expect(existsSync(join(folder, 'killed/sweep.csv'))).toBe(false);
    const before = read(folder, 'killed/sweep.csv.part');
    expect(rowsOf(before).length).toBeGreaterThan(3);
    expect(rowsOf(before).length).toBeLessThan(13);
    expect(read(folder, 'whole/sweep.csv').startsWith(before)).toBe(true);
    tickover(folder, 'sweep', 'study.yaml', '--out', 'killed', '--resume', '--quiet', '--workers', '1');
    expectSame('killed');
  });
});

describe('what a sweep refuses', () => {
  const refused = (...args: string[]): string => {
    const said = tickover(folder, ...args);
    expect(said.status, said.stdout).toBe(2);
    expect(said.stderr).not.toMatch(/\n\s+at /u);
    return said.stderr;
  };

  it('lists every mistake of a study with its place', () => {
    const wrong = toyStudy(`
vary:
  - kind: range
    setting: cylinder.boar
    from: 40 mm
    to: 60 mm
  - kind: values
    setting: valve_gear.admission.clearance
    values: [honed / lapped, honed / polished]
`);
    const said = tickover(wrong, 'sweep', 'study.yaml');
    expect(said.status).toBe(2);
    const lines = said.stderr.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(/^study\.yaml:7:11 {2}cylinder: .*Did you mean "bore"\?/u);
    expect(lines[1]).toMatch(/^study\.yaml:8:9 {2}/u);
    expect(lines[2]).toMatch(/^study\.yaml:11:\d+ {2}valve_gear\.admission\.clearance: /u);
  });

  it('says when a study does not ask what the command answers', () => {
    for (const command of ['best', 'limit', 'odds'])
      expect(refused(command, 'study.yaml')).toContain(`no "${command}"`);
  });
});

describe('a sweep without a study file', () => {
  it('takes what varies from the command line', () => {
    const said = tickover(
      folder,
      'sweep',
      'engine.yaml',
      '--vary',
      'supply.pressure = 2 bar gauge to 3 bar gauge in 2',
      '--set',
      'cylinder.bore=48 mm',
      '--out',
      'said',
    );
    expect(said.status, said.stderr).toBe(0);
    expect(rowsOf(read(folder, 'said/sweep.csv'))).toHaveLength(3);
  });

  it('points at the option that is wrong', () => {
    const said = tickover(folder, 'sweep', 'engine.yaml', '--vary', 'supply.pressure = 2 bar to 3 bar in 2');
    expect(said.stderr).toMatch(
      /^--vary supply\.pressure = 2 bar to 3 bar in 2 {2}supply\.pressure: .*gauge/u,
    );
  });
});

describe('values said beside the scenario of a run', () => {
  it('stand above it', () => {
    const disc = scenario('cider-press-disc.yaml');
    const said = tickover(folder, 'run', disc, '--set', 'title=Larger', '--out', 'run');
    expect(said.stdout).toContain('Larger');
  });

  it('are named when they are wrong', () => {
    expect(tickover(folder, 'run', scenario('cider-press.yaml'), '--set', 'cylinder.bore=60').stderr).toMatch(
      /^--set cylinder\.bore=60 {2}cylinder\.bore: .*Write "60 mm"/u,
    );
  });
});
