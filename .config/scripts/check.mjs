/** `npm run check`: everything a change must pass besides the tests. Runs all steps, then says which failed. */
import { join } from 'node:path';
import { succeeds, toolPath } from './steps.mjs';

/** @type {(project: string) => [string, string[]]} */
const types = (project) => [toolPath('tsc'), ['--noEmit', '-p', project]];
/** @type {(name: string) => [string, string[]]} */
const script = (name) => [process.execPath, [join('.config/scripts', name)]];

/** @type {[string, [string, string[]]][]} */
const steps = [
  ['kernel', script('kernel.mjs')],
  ['types of everything', types('tsconfig.json')],
  ['types of the core, without platform', types('.config/tsconfig.core.json')],
  ['types of the report script', types('.config/tsconfig.client.json')],
  ['eslint', [toolPath('eslint'), ['--config', '.config/eslint.config.mjs', '--max-warnings', '0', '.']]],
  ['prettier', [toolPath('prettier'), ['--check', '--log-level', 'warn', '.']]],
  ['layers', script('layers.mjs')],
  ['dead code', [toolPath('knip'), ['--config', '.config/knip.json']]],
  ['build', script('build.mjs')],
  ['publint', [toolPath('publint'), ['--strict']]],
  ['pack smoke', script('pack-smoke.mjs')],
];

const failed = steps.flatMap(([name, [command, args]]) => {
  console.log(`\n== ${name}`);
  return succeeds(command, args) ? [] : [name];
});

console.log(
  failed.length === 0 ? `\ncheck: all ${steps.length} steps passed` : `\ncheck: failed: ${failed.join(', ')}`,
);
process.exitCode = failed.length === 0 ? 0 : 1;
