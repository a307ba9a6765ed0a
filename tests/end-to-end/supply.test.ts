/** `tickover supply` from outside: sentences, table, JSON, exit codes. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { emptyFolder, scenario, tickover } from './command.ts';

interface Printed {
  readonly supply: Readonly<Record<string, number | string | null>>;
}

it('follows an engine on a compressor that is too small, and writes its table', () => {
  const folder = emptyFolder();
  const said = tickover(
    folder,
    'supply',
    scenario('cider-press-small-compressor.yaml'),
    '--json',
    '--hours',
    '1',
  );
  expect([said.status, said.stderr]).toEqual([0, '']);
  const written = join(folder, 'reports/cider-press-small-compressor');
  expect(readdirSync(written).sort()).toEqual(['supply.csv', 'supply.json']);
  expect(said.stdout).toBe(readFileSync(join(written, 'supply.json'), 'utf8'));
  const { supply } = JSON.parse(said.stdout) as Printed;
  expect(supply).toMatchObject({ end: 'settles', wanted_time_s: 3600, duty: 1 });
  expect(supply['sustained_speed_rpm']).toBeLessThan(supply['speed_rpm'] as number);
  expect(supply['ledger_mass_residual']).toBeLessThan(1e-9);
  const rows = readFileSync(join(written, 'supply.csv'), 'utf8').trimEnd().split('\r\n');
  const [time, , , speed] = rows.at(-1)!.split(',').map(Number);
  expect(time).toBe(3600);
  expect(speed! / (supply['sustained_speed_rpm'] as number)).toBeCloseTo(1, 4);
});

it('says what is missing of an engine without a compressor, and which hours it takes', () => {
  const folder = emptyFolder();
  const without = tickover(folder, 'supply', scenario('hay-winch-twin.yaml'));
  expect(without.status).toBe(2);
  expect(without.stdout).toBe('');
  expect(without.stderr).toContain('describes no compressor');
  expect(without.stderr).toContain('free_air_delivery: 150 L/min');
  for (const hours of ['0', '49', 'long']) {
    const said = tickover(folder, 'supply', scenario('cider-press.yaml'), '--hours', hours);
    expect(said.status).toBe(2);
    expect(said.stderr).toContain('--hours: expected hours from 1/60 to 48');
  }
  expect(readdirSync(folder)).toEqual([]);
});
