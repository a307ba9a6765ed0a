/** `tickover draw` from outside: files, options, and what it says when there is nothing to cut. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, scenario, tickover } from './command.ts';

/** The press with lines replaced, in a folder of its own. */
function changed(...changes: readonly (readonly [string, string])[]): string {
  const text = changes.reduce(
    (own, [from, to]) => {
      if (!own.includes(from)) throw new Error(`no "${from}" in the scenario`);
      return own.replace(from, to);
    },
    readFileSync(scenario('cider-press.yaml'), 'utf8'),
  );
  const file = join(emptyFolder(), 'press.yaml');
  writeFileSync(file, text);
  return file;
}

describe('tickover draw', () => {
  it('writes two files for each part and two sheets, below the reports', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'draw', scenario('cider-press-disc.yaml'));
    expect(said.stderr).toBe('');
    expect(said.status).toBe(0);
    expect(said.stdout).toContain(join('reports', 'cider-press-disc', 'drawings', 'sheets.html'));
    expect(said.stdout).toContain('Compressed air starts an engine without warning.');
    const parts = ['back-plate', 'disc', 'front-plate', 'spacer'];
    expect(readdirSync(join(folder, 'reports/cider-press-disc/drawings')).sort()).toEqual(
      [...parts.flatMap((part) => [`${part}.dxf`, `${part}.svg`]), 'setting.html', 'sheets.html'].sort(),
    );
  });

  it('draws the parts that are asked for, with the kerf of the cutter', () => {
    const folder = emptyFolder();
    const args = ['--part', 'cam-hub', '--part', 'admission-cam', '--kerf', '1.2mm', '--out', 'here'];
    const said = tickover(folder, 'draw', scenario('cider-press.yaml'), ...args);
    expect(said.status, said.stderr).toBe(0);
    expect(said.stdout).toContain('for a kerf of 1.2 mm');
    expect(readdirSync(join(folder, 'here')).sort()).toEqual([
      'admission-cam.dxf',
      'admission-cam.svg',
      'cam-hub.dxf',
      'cam-hub.svg',
      'setting.html',
      'sheets.html',
    ]);
  });

  it('gives any engine its setting sheet', () => {
    const folder = emptyFolder();
    const said = tickover(folder, 'draw', scenario('gate-opener-electric.yaml'), '--out', 'here');
    expect(said.status, said.stderr).toBe(0);
    expect(said.stdout).toContain('There are no drawings for the valve gear "electric valves" yet');
    expect(readdirSync(join(folder, 'here'))).toEqual(['setting.html']);
  });
});

it('refuses a base circle that would be undercut, with the smallest that is not, and writes nothing', () => {
  const file = changed(['  exhaust:', '  cams:\n    follower: flat\n    base_circle: 40 mm\n  exhaust:']);
  const folder = emptyFolder();
  const said = tickover(folder, 'draw', file);
  expect(said.status).toBe(2);
  expect(said.stdout).toBe('');
  expect(said.stderr).toMatch(
    /press\.yaml:\d+:\d+ {2}valve_gear\.cams\.base_circle: .*at least 66\.8 mm for the admission cam.*undercut/u,
  );
  expect(said.stderr).not.toMatch(/\n\s+at /);
  expect(readdirSync(folder)).toEqual([]);
});
