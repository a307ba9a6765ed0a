/**
 * Checks who may import whom (rules: ../dependency-cruiser.cjs), in this project or in the folder given.
 * A run that looked at nothing counts as a failure: the checker itself would report it as a success.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot, toolPath } from './steps.mjs';

/** @typedef {{ from: string, to: string, rule: { name: string }, cycle?: { name: string }[] }} Violation */

const folder = process.argv[2] ?? projectRoot;
const parts = ['src', 'tests'].filter((part) => readdirSync(folder).includes(part));

/** @returns {{ summary: { violations: Violation[] }, modules: { source: string }[] }} */
function cruise() {
  const config = join(projectRoot, '.config/dependency-cruiser.cjs');
  const done = spawnSync(toolPath('depcruise'), ['--config', config, '--output-type', 'json', ...parts], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  if (!done.stdout.startsWith('{')) throw new Error(`the layer checker gave no result: ${done.stderr}`);
  return JSON.parse(done.stdout);
}

/** @param {Violation} violation */
function describe({ rule, from, to, cycle }) {
  const way = cycle ? [from, ...cycle.map((step) => step.name)].join(' -> ') : `${from} -> ${to}`;
  return `layers: ${rule.name}: ${way}`;
}

const { summary, modules } = parts.length > 0 ? cruise() : { summary: { violations: [] }, modules: [] };
const own = modules.map((module) => module.source).filter((source) => source.startsWith('src/'));
const inner = own.filter((source) => /^src\/.+\/index\.ts$/.test(source));
const complaints = [
  ...summary.violations.map(describe),
  ...inner.map((source) => `layers: no-inner-index: ${source}`),
];

if (own.length === 0) complaints.push('layers: 0 modules of src were looked at');
for (const line of complaints) console.error(line);
console.log(`layers: ${own.length} modules of src looked at, ${complaints.length} complaints`);
process.exitCode = complaints.length > 0 ? 1 : 0;
