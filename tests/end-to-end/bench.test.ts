/** The commands about the bench as a user runs them: what they print, what they write, how they refuse. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, projectRoot, tickover } from './command.ts';

function benchFolder(): string {
  const folder = emptyFolder();
  cpSync(join(projectRoot, 'scenarios/bench'), folder, { recursive: true });
  return folder;
}

describe('tickover bench', () => {
  it.each(['chest-decay', 'break-away', 'pump-up'])('%s: says what it found and writes the page', (name) => {
    const folder = benchFolder();
    const { status, stdout, stderr } = tickover(folder, 'bench', `${name}.yaml`);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain(`Report: reports/${name}/bench.html`);
    expect(stdout).toContain('For the scenario');
    expect(stdout).toContain('Local rules for machines');
    expect(stdout).not.toMatch(/NaN|undefined|Infinity/);
    const page = readFileSync(join(folder, 'reports', name, 'bench.html'), 'utf8');
    expect(page).toContain('<!doctype html>');
    expect(page.slice(page.indexOf('<main>'), page.indexOf('</main>'))).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('prints one JSON object that is the file it writes', () => {
    const folder = benchFolder();
    const { stdout } = tickover(folder, 'bench', 'chest-decay.yaml', '--json', '--out', 'out');
    expect(JSON.parse(stdout)).toEqual(JSON.parse(readFileSync(join(folder, 'out/bench.json'), 'utf8')));
    expect(JSON.parse(stdout)).toMatchObject({
      test: 'bench test, pressure decay',
      finding: { usable: true, estimates: [{ dimension: 'volume flow' }, {}, {}] },
    });
  });

  it('shows the units of the reader, and files the same bytes', () => {
    const folder = benchFolder();
    const { stdout: metric } = tickover(folder, 'bench', 'chest-decay.yaml', '--out', 'metric');
    const imperial = ['--units', 'imperial'];
    const { stdout } = tickover(folder, 'bench', 'chest-decay.yaml', '--out', 'imperial', ...imperial);
    const [page, filed, filedMetric] = [
      'imperial/bench.html',
      'imperial/bench.json',
      'metric/bench.json',
    ].map((name) => readFileSync(join(folder, name), 'utf8')) as [string, string, string];
    expect(metric).toContain('It leaks 1.01 L/min ANR');
    const shown = page.slice(page.indexOf('<main>'), page.indexOf('</main>'));
    for (const text of [stdout, shown]) {
      expect(text.replace(/\s/gu, ' ')).toContain('It leaks 0.0356 cfm ANR');
      expect(text).toMatch(/\d\spsi\s+gauge/u);
      expect(text).not.toMatch(/\d\s(?:m?bar|L\/min|mm|µm|J)\b/u);
    }
    expect(shown).toContain('Pressure [psi gauge]');
    expect(filed).toBe(filedMetric);
  });

  it('says where a reading is wrong, and writes nothing', () => {
    const folder = benchFolder();
    const readings = readFileSync(join(folder, 'chest-decay.csv'), 'utf8').replace('1.82', '1,82');
    writeFileSync(join(folder, 'chest-decay.csv'), readings);
    const { status, stdout, stderr } = tickover(folder, 'bench', 'chest-decay.yaml');
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toBe(
      'chest-decay.csv:4:1  expected 2 numbers, one for each column of the header, received 3.\n',
    );
  });

  it('reads no files above the folder of the sheet', () => {
    const folder = benchFolder();
    const sheet = join(folder, 'chest-decay.yaml');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('chest-decay.csv', '../chest-decay.csv'));
    const { status, stderr } = tickover(folder, 'bench', 'chest-decay.yaml');
    expect(status).toBe(2);
    expect(stderr).toContain("only files in the scenario's folder or below it are read");
  });
});

describe('tickover why', () => {
  it('ranks causes for a symptom', () => {
    const folder = benchFolder();
    const { status, stdout, stderr } = tickover(
      folder,
      ...['why', 'press-as-drawn.yaml', '--symptom', 'kicks-back', '--at', '20deg'],
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('It kicks back: most likely');
    expect(stdout).toContain('Causes, the likeliest first');
    expect(stdout).toContain('  1. ');
    expect(stdout).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('shows the units of the reader, and files the same bytes', () => {
    const folder = benchFolder();
    const why = ['why', 'press-as-drawn.yaml', '--symptom', 'moves-and-stops'];
    tickover(folder, ...why, '--out', 'metric');
    const { stdout } = tickover(folder, ...why, '--out', 'imperial', '--units', 'imperial');
    expect(stdout).toContain('ft·lbf');
    expect(stdout).not.toMatch(/\d (?:bar|N·m|J|L\/min|kg·m²)\b/u);
    const [filed, filedMetric] = ['imperial', 'metric'].map((out) =>
      readFileSync(join(folder, out, 'bench.json'), 'utf8'),
    ) as [string, string];
    expect(filed).toBe(filedMetric);
    expect(readFileSync(join(folder, 'imperial/bench.html'), 'utf8')).toContain('Torque [lbf·ft]');
  });

  it.each([
    [
      ['--symptom', 'smokes'],
      '--symptom: expected one of the following, received "smokes".\n  hisses-at-rest: ',
    ],
    [
      ['--symptom', 'kicks-back', '--at', '30'],
      '--at: expected a crank angle with its unit, received "30" (no unit). Write "30 deg".',
    ],
  ])('refuses %s', (args, text) => {
    const { status, stderr } = tickover(benchFolder(), 'why', 'press-as-drawn.yaml', ...args);
    expect(status).toBe(2);
    expect(stderr).toContain(text);
  });
});
