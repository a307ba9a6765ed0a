/** What docs/dependencies.md says about the packages we come with is so. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../end-to-end/command.ts';

const read = (path: string): string => readFileSync(join(projectRoot, path), 'utf8');
const json = (path: string): unknown => JSON.parse(read(path));

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
  readonly hasInstallScript?: boolean;
}

const { dependencies } = json('package.json') as { dependencies: Readonly<Record<string, string>> };
const { packages } = json('package-lock.json') as { packages: Readonly<Record<string, Locked>> };
const page = read('docs/dependencies.md');

const ours = Object.entries(packages)
  .filter(([path, { dev, devOptional }]) => path !== '' && dev !== true && devOptional !== true)
  .map(([path, own]) => ({ name: path.replace(/^.*node_modules\//u, ''), ...own }));

const rows = [...page.matchAll(/^\| `([^`]+)` +\| (\S+) +\| (.+?) +\| (.+?) +\|$/gmu)].map(
  ([, name = '', licence = '', place = '', purpose = '']) => ({ name, licence, place, purpose }),
);
const [, tail = ''] = page.split('They bring others with them');
const brought = [...tail.matchAll(/`(@?[\w./-]+)`/gu)].map(([, name = '']) => name);

describe('the packages we come with', () => {
  it('are listed, each with its licence and a purpose', () => {
    expect(rows.map(({ name }) => name)).toEqual(Object.keys(dependencies));
    for (const { name, licence, purpose } of rows) {
      expect(packages[`node_modules/${name}`]?.license, name).toBe(licence);
      expect(purpose.length, name).toBeGreaterThan(12);
    }
  });

  it('bring with them what is listed', () => {
    const names = new Set(ours.map(({ name }) => name).filter((name) => !(name in dependencies)));
    expect([...brought].sort()).toEqual([...names].sort());
    for (const { name, license } of ours.filter((own) => !(own.name in dependencies)))
      expect(['MIT', 'ISC'], name).toContain(license);
  });

  it('are pinned, have a hash, and run nothing when they are installed', () => {
    for (const [name, version] of Object.entries(dependencies)) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(?:-[\w.]+)?$/u);
      expect(packages[`node_modules/${name}`]?.version, name).toBe(version);
    }
    for (const { name, integrity, hasInstallScript } of ours) {
      expect(integrity, name).toMatch(/^sha512-/u);
      expect(hasInstallScript, name).toBeUndefined();
    }
    expect(read('.npmrc').split('\n')).toContain('ignore-scripts=true');
  });

  it('are bundled, or not, as it is said', () => {
    const bundled = [...read('dist/cli/LICENCES-OF-PARTS.txt').matchAll(/^(\S+) \d\S* \([\w.-]+\)$/gmu)].map(
      ([, name = '']) => name,
    );
    const said = (place: string): string[] =>
      rows.filter((row) => row.place === place).map(({ name }) => name);
    expect(bundled.filter((name) => name in dependencies).sort()).toEqual(said('bundled').sort());
    expect(said('in each report')).toEqual(['uplot']);
    expect(read('dist/report/client.js')).toContain('uplot');
  });
});
