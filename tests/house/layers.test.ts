/**
 * The layer checker itself is on trial here: a made-up tree with one offence per rule must give exactly these
 * complaints, and a tree without modules must not pass.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const checker = join(root, '.config/scripts/layers.mjs');

/** Importing file, what it says, the rule that must object (none: allowed). */
const cases: [file: string, text: string, ...rules: string[]][] = [
  ['src/kinds/a.ts', "import '../numerics/leaf.ts';", 'kinds-imports'],
  ['src/quantity/a.ts', "import type { Leaf } from '../numerics/leaf.ts';", 'quantity-imports'],
  ['src/quantity/b.ts', "import { leaf } from '../kinds/leaf.ts'; leaf;", 'quantity-types-only'],
  ['src/quantity/c.ts', "import type { Leaf } from '../kinds/leaf.ts'; import 'mathjs';"],
  ['src/quantity/d.ts', "import '../numerics/elementary/leaf.ts';"],
  ['src/numerics/a.ts', "import '../kinds/leaf.ts';", 'numerics-imports'],
  ['src/kernel/a.ts', "import '../numerics/leaf.ts';", 'kernel-imports'],
  ['src/kernel/main.ts', "export { leaf } from './leaf.ts';"],
  ['src/kernel/b.wasm.ts', "import '../run/leaf.ts';"],
  ['src/kernel/header.ts', 'export const PLACES = 0;'],
  ['src/numerics/c.ts', "import '../kernel/header.ts'; import type * as kernel from '../kernel/main.ts';"],
  ['src/numerics/d.ts', "import '../kernel/leaf.ts';", 'kernel-through-its-door'],
  ['src/gas/c.ts', "import '../kernel/header.ts';", 'gas-imports'],
  ['src/numerics/b.ts', "import 'odex';"],
  ['src/gas/a.ts', "import '../quantity/leaf.ts';", 'gas-imports'],
  ['src/gas/b.ts', "import '../kinds/leaf.ts'; import '../numerics/leaf.ts';"],
  ['src/parts/a.ts', "import type { Leaf } from '../model/leaf.ts';", 'parts-imports'],
  ['src/parts/b.ts', "import '../quantity/leaf.ts';", 'parts-imports'],
  ['src/model/a.ts', "import '../run/leaf.ts';", 'model-imports'],
  ['src/run/a.ts', "import '../study/leaf.ts';", 'run-imports'],
  ['src/run/b.ts', "import '../model/leaf.ts'; import '../gas/leaf.ts';"],
  ['src/study/a.ts', "import '../scenario/leaf.ts';", 'study-imports'],
  ['src/measure/a.ts', "import '../study/leaf.ts';", 'measure-imports'],
  ['src/measure/b.ts', "import '../run/leaf.ts'; import '../parts/leaf.ts';"],
  ['src/workshop/a.ts', "import '../run/leaf.ts';", 'workshop-imports'],
  ['src/workshop/b.ts', "import '../parts/leaf.ts';"],
  ['src/scenario/a.ts', "import '../verdict/leaf.ts';", 'scenario-imports'],
  ['src/scenario/b.ts', "import { leaf } from '../parts/leaf.ts'; leaf;", 'scenario-types-only'],
  [
    'src/scenario/c.ts',
    "import '../parts/valve-gears/registry.ts'; import '../gas/registry.ts'; import 'yaml';",
  ],
  ['src/scenario/d.ts', "import type { Leaf } from '../run/leaf.ts';"],
  ['src/verdict/a.ts', "import '../report/leaf.ts';", 'verdict-imports'],
  ['src/verdict/b.ts', "import { leaf } from '../run/leaf.ts'; leaf;", 'verdict-types-only'],
  ['src/verdict/c.ts', "import '../quantity/leaf.ts'; import type { Leaf } from '../study/leaf.ts';"],
  ['src/verdict/d.ts', "import '../numerics/elementary/leaf.ts';"],
  ['src/verdict/e.ts', "import '../numerics/leaf.ts';", 'verdict-imports'],
  ['src/report/a.ts', "import type { Leaf } from '../scenario/leaf.ts';", 'report-imports'],
  ['src/report/b.ts', "import { leaf } from '../model/leaf.ts'; leaf;", 'report-types-only'],
  ['src/report/c.ts', "import '../verdict/leaf.ts';"],
  ['src/report/e.ts', "import '../numerics/elementary/leaf.ts';"],
  ['src/report/d.ts', "import './client/leaf.ts';", 'client-is-a-bundle'],
  ['src/report/client/a.ts', "import 'uplot';"],
  ['src/cli/a.ts', "import '../run/leaf.ts';", 'cli-imports'],
  ['src/cli/b.ts', "import '../page/leaf.ts';", 'cli-imports'],
  ['src/cli/c.ts', "import 'node:fs'; import 'yargs'; import '../index.ts';"],
  ['src/page/a.ts', "import '../cli/leaf.ts';", 'page-imports'],
  ['src/attic/a.ts', "import '../kinds/leaf.ts';", 'known-rooms'],
  ['src/index.ts', "export * from './run/leaf.ts'; import './cli/leaf.ts';", 'index-imports'],
  ['src/run/again.ts', "export { leaf } from '../gas/leaf.ts';", 'only-index-re-exports'],
  ['src/run/index.ts', 'export const hall = 1;', 'no-inner-index'],
  ['src/run/clock.ts', "import 'node:fs';", 'node-only-in-cli'],
  ['src/run/maths.ts', "import 'mathjs';", 'mathjs-only-in-quantity'],
  ['src/run/text.ts', "import 'yaml';", 'yaml-only-in-scenario'],
  ['src/run/steps.ts', "import 'odex';", 'odex-only-in-numerics'],
  ['src/run/args.ts', "import 'yargs';", 'yargs-only-in-cli'],
  ['src/report/plot.ts', "import 'uplot';", 'uplot-only-in-report-client'],
  ['src/run/proof.ts', "import '../../tests/helper.ts';", 'no-tests-in-src'],
  ['src/run/tool.ts', "import 'fast-check';", 'no-development-packages'],
  ['src/run/lost.ts', "import './nowhere.ts';", 'no-unresolved'],
  ['src/gas/egg.ts', "import './hen.ts';", 'no-cycles'],
  ['src/gas/hen.ts', "import './egg.ts';"],
  ['tests/a.test.ts', "import 'node:fs'; import '../src/run/leaf.ts'; import 'fast-check';"],
];

const rooms =
  'kinds quantity kernel numerics numerics/elementary gas parts parts/valve-gears model run study scenario verdict report report/client cli page';

let folder: string;

function plant(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), `${text}\n`);
}

function check(): { status: number | null; complaints: string[]; last: string } {
  const done = spawnSync(process.execPath, [checker, folder], { encoding: 'utf8' });
  return { status: done.status, complaints: done.stderr.trim().split('\n'), last: done.stdout.trim() };
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tickover-layers-'));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  writeFileSync(
    join(folder, 'package.json'),
    '{ "type": "module", "devDependencies": { "fast-check": "*" } }',
  );
});

afterEach(() => {
  rmSync(folder, { recursive: true });
});

test('every rule objects to its offence and to nothing else', () => {
  const leaf = 'export const leaf = 1; export type Leaf = number;';
  for (const room of rooms.split(' ')) plant(`src/${room}/leaf.ts`, leaf);
  for (const room of ['gas', 'parts/valve-gears']) plant(`src/${room}/registry.ts`, leaf);
  plant('tests/helper.ts', leaf);
  for (const [file, text] of cases) plant(file, text);

  const { status, complaints } = check();

  const found = complaints.map((line) => /^layers: (\S+): (\S+)/.exec(line)?.slice(1).join(' ') ?? line);
  const wanted = cases.flatMap(([file, , ...rules]) => rules.map((rule) => `${rule} ${file}`));
  expect(found.sort()).toEqual(wanted.sort());
  expect(status).toBe(1);
});

test('a clean tree passes', () => {
  plant('src/gas/leaf.ts', 'export const leaf = 1;');
  plant('src/run/leaf.ts', "import '../gas/leaf.ts';");
  expect(check()).toMatchObject({ status: 0, last: 'layers: 2 modules of src looked at, 0 complaints' });
});

test('a tree without modules does not pass', () => {
  expect(check()).toMatchObject({ status: 1, complaints: ['layers: 0 modules of src were looked at'] });
});
