/** `tickover run` from outside: verdict, files, JSON, exit codes. */
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, projectRoot, scenario, tickover } from './command.ts';

interface Printed {
  outcome: { kind: string; reason: string };
  settled: Record<string, number> | null;
  compressor: { duty: number; minutes_until_sag: number | null } | null;
  ledger: { mass_residual: number; energy_residual: number };
  trials: { running: { changes: { settings: Record<string, string>[] }[] } | null } | null;
}

const jsonOf = (cwd: string, name: string): Printed =>
  JSON.parse(tickover(cwd, 'run', scenario(name), '--json').stdout) as Printed;

const shipped = readdirSync(join(projectRoot, 'scenarios')).filter((name) => name.endsWith('.yaml'));

describe('tickover run', () => {
  it('prints a verdict and writes the report below the current folder', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'run', scenario('cider-press.yaml'));
    expect(said.stderr).toBe('');
    expect(said.status).toBe(0);
    expect(said.stdout).toContain('It runs and settles at ');
    expect(said.stdout).toContain(join('reports', 'cider-press', 'report.html'));
    expect(readdirSync(join(folder, 'reports/cider-press')).sort()).toEqual([
      'cycle.csv',
      'report.html',
      'start-up.csv',
      'starts.csv',
      'summary.json',
      'supply.csv',
      'torque.csv',
    ]);
  });

  it('prints nothing but one JSON object with --json, the same as the file', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'run', scenario('cider-press.yaml'), '--json', '--out', 'here');
    expect(said.stdout).toBe(readFileSync(join(folder, 'here/summary.json'), 'utf8'));
    const { outcome, settled, compressor, ledger } = JSON.parse(said.stdout) as Printed;
    expect(outcome.kind).toBe('settled');
    for (const key of [
      'speed_rpm',
      'period_s',
      'indicated_work_J',
      'imep_Pa',
      'air_anr_L_per_min',
      'leak_share',
      'blow_through_share',
      'speed_fluctuation',
    ])
      expect(settled?.[key], key).toBeTypeOf('number');
    expect(compressor?.duty).toBeGreaterThan(0);
    expect(compressor?.minutes_until_sag).toBeNull();
    expect(ledger.mass_residual).toBeLessThan(1e-6);
    expect(ledger.energy_residual).toBeLessThan(1e-6);
  });

  it('says nothing with --quiet and still writes', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'run', scenario('cider-press-disc.yaml'), '--quiet');
    expect(said).toEqual({ status: 0, stdout: '', stderr: '' });
    expect(readdirSync(join(folder, 'reports/cider-press-disc'))).toContain('report.html');
  });

  it('writes one cycle row per crank degree', () => {
    const folder = emptyFolder();
    tickover(folder, 'run', scenario('cider-press.yaml'), '--quiet', '--out', 'out');
    const rows = readFileSync(join(folder, 'out/cycle.csv'), 'utf8').trimEnd().split('\r\n');
    expect(rows).toHaveLength(1 + 361);
    expect(rows[0]).toMatch(/^crank_angle_deg,/);
  });

  it('gives the same bytes each time', () => {
    const folder = emptyFolder();
    for (const out of ['a', 'b'])
      tickover(folder, 'run', scenario('cider-press.yaml'), '--quiet', '--out', out);
    const names = readdirSync(join(folder, 'a'));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names)
      expect(readFileSync(join(folder, 'a', name)).equals(readFileSync(join(folder, 'b', name))), name).toBe(
        true,
      );
  });

  it('tells of an engine that does not run what would make it run, before any metal is cut', () => {
    const folder = emptyFolder();
    const { stdout } = tickover(folder, 'run', scenario('cider-press-disc.yaml'), '--out', 'out');
    const next = stdout
      .slice(stdout.indexOf('\nNext\n'), stdout.indexOf('\nMind\n'))
      .replaceAll(/\s+/gu, ' ');
    expect(next).toMatch(
      /Try a smaller gap .* with valve_gear\.face_gap at 45 um instead of 180 um: it then starts from the position set, settles at 3\d\d rpm with \d\d\.\d W into the load/u,
    );
    expect(readFileSync(join(folder, 'out/report.html'), 'utf8')).toContain(
      'it then starts from the position set',
    );
    const { verdict } = JSON.parse(readFileSync(join(folder, 'out/summary.json'), 'utf8')) as {
      verdict: { next_change: string };
    };
    expect(next.trim()).toBe(`Next ${verdict.next_change}`);
  });

  it('leaves no cycle of an earlier engine beside a report of one that does not run', () => {
    const folder = emptyFolder();
    tickover(folder, 'run', scenario('cider-press.yaml'), '--quiet', '--out', 'out');
    tickover(folder, 'run', scenario('cider-press-disc.yaml'), '--quiet', '--out', 'out');
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([
      'report.html',
      'start-up.csv',
      'starts.csv',
      'summary.json',
      'torque.csv',
    ]);
  });
});

describe('the shipped scenarios', () => {
  it.each(shipped)('%s runs with closed books and says what it shows', (name) => {
    const result = jsonOf(emptyFolder(), name);
    expect(result.ledger.mass_residual).toBeLessThan(1e-6);
    expect(result.ledger.energy_residual).toBeLessThan(1e-6);
    expect(readFileSync(scenario(name), 'utf8')).toMatch(/^# Shows: /m);
  });

  it('show what their comments say', () => {
    const folder = emptyFolder();
    const honed = jsonOf(folder, 'cider-press.yaml');
    const drilled = jsonOf(folder, 'cider-press-drilled.yaml');
    const disc = jsonOf(folder, 'cider-press-disc.yaml');
    expect(honed.settled?.['leak_share']).toBeLessThan(0.1);
    expect(drilled.settled?.['leak_share']).toBeGreaterThan(0.5);
    // The receiver settles where the compressor gives as much as leaks away, and never lets it stop.
    expect(drilled.compressor?.duty).toBe(1);
    expect(drilled.compressor?.minutes_until_sag).toBeNull();
    expect(honed.compressor?.duty).toBeLessThan(0.5);
    expect(drilled.settled?.['speed_rpm']).toBeLessThan(honed.settled?.['speed_rpm'] ?? 0);
    expect(disc.outcome.kind).toBe('no-start');
    expect(disc.trials?.running?.changes[0]?.settings).toEqual([
      { path: 'valve_gear.face_gap', now: '180 um', then: '45 um' },
    ]);
    expect(honed.trials).toBeNull();
  });
});

describe('bad input', () => {
  const refused = (cwd: string, ...args: string[]): string => {
    const said = tickover(cwd, ...args);
    expect(said.status, said.stderr).toBe(2);
    expect(said.stdout).toBe('');
    expect(said.stderr).not.toMatch(/\n\s+at /);
    return said.stderr;
  };

  it('names a file that is not there', () => {
    expect(refused(emptyFolder(), 'run', 'nowhere.yaml')).toBe(
      'nowhere.yaml: cannot read this scenario, there is no such file.\n',
    );
  });

  it('refuses a folder, binary data and an endless file', () => {
    const folder = emptyFolder();
    expect(refused(folder, 'run', '.')).toContain('it is a folder');
    writeFileSync(join(folder, 'binary.yaml'), Uint8Array.of(0xff, 0xfe, 0x00, 0x41));
    expect(refused(folder, 'run', 'binary.yaml')).toContain('it is not UTF-8 text');
    writeFileSync(join(folder, 'huge.yaml'), Buffer.alloc(5_000_000, 0x20));
    expect(refused(folder, 'run', 'huge.yaml')).toContain('5.0 MB');
  });

  it('lists every problem of a scenario with its place', () => {
    const folder = emptyFolder();
    const text = readFileSync(scenario('cider-press.yaml'), 'utf8')
      .replace('bore: 50 mm', 'bore: 50')
      .replace('pressure: 3 bar gauge', 'pressure: 3 bar')
      .replace('viscous_torque', 'viscous_tork');
    writeFileSync(join(folder, 'press.yaml'), text);
    const complaint = refused(folder, 'run', 'press.yaml');
    expect(complaint.trimEnd().split('\n')).toHaveLength(3);
    expect(complaint).toMatch(/^press\.yaml:\d+:\d+ {2}cylinder\.bore: /m);
    expect(complaint).toMatch(/gauge.*absolute/);
    expect(complaint).toContain('viscous_torque');
  });

  it('refuses unknown options and commands with the help', () => {
    const folder = emptyFolder();
    expect(refused(folder, 'run', scenario('cider-press.yaml'), '--colour')).toMatch(/colour/);
    expect(refused(folder, 'fly')).toMatch(/fly/);
    expect(refused(folder)).toMatch(/Name a command/);
  });

  it('says when it may not write, and leaves nothing half-written', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'taken'), '');
    expect(refused(folder, 'run', scenario('cider-press-disc.yaml'), '--out', 'taken')).toContain('taken');
    mkdirSync(join(folder, 'out/report.html'), { recursive: true });
    expect(refused(folder, 'run', scenario('cider-press-disc.yaml'), '--out', 'out')).toContain(
      'report.html',
    );
    expect(readdirSync(join(folder, 'out'))).toEqual(['report.html']);
  });
});

describe('the terminal', () => {
  it('survives a reader that goes away', () => {
    const main = join(projectRoot, 'dist/cli/main.js');
    const said = spawnSync(
      'bash',
      [
        '-c',
        `set -o pipefail; node "${main}" run "${scenario('cider-press-disc.yaml')}" --out "${emptyFolder()}" | head -1`,
      ],
      { encoding: 'utf8' },
    );
    expect(said.stderr).toBe('');
    expect(said.status).toBe(0);
    expect(said.stdout).toBe('Village cider press, first disc valve\n');
  });

  it('knows its version and is executable', () => {
    const { version } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8')) as {
      version: string;
    };
    expect(tickover(emptyFolder(), '--version').stdout).toBe(`${version}\n`);
    const main = join(projectRoot, 'dist/cli/main.js');
    expect(statSync(main).mode & 0o111).not.toBe(0);
  });
});
