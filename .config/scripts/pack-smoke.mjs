/**
 * Packs the built project, installs the tarball in an empty folder and uses it as a stranger would:
 * the version, one run of a packaged scenario, the library. Needs dist/ to be built.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectRoot, toolPath } from './steps.mjs';

const scenario = 'cider-press.yaml';
const home = mkdtempSync(join(tmpdir(), 'tickover-pack-'));

/**
 * Runs a command and returns what it printed; a failure carries both outputs.
 * @param {string} cwd
 * @param {string} command
 * @param {string[]} args
 */
function output(cwd, command, ...args) {
  const done = spawnSync(command, args, { cwd, encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (done.error) throw done.error;
  if (done.status === 0) return done.stdout;
  throw new Error(
    `${[command, ...args].join(' ')} gave exit code ${done.status}\n${done.stdout}${done.stderr}`,
  );
}

/**
 * @param {boolean} holds
 * @param {string} complaint
 */
function must(holds, complaint) {
  if (!holds) throw new Error(complaint);
}

function pack() {
  output(projectRoot, 'npm', 'pack', '--ignore-scripts', '--pack-destination', home);
}

function install() {
  const tarball = readdirSync(home).find((name) => name.endsWith('.tgz'));
  must(tarball !== undefined, 'npm pack left no tarball');
  writeFileSync(join(home, 'package.json'), '{ "name": "stranger", "private": true, "type": "module" }\n');
  output(
    home,
    'npm',
    'install',
    '--ignore-scripts',
    '--prefer-offline',
    '--no-audit',
    '--no-fund',
    `./${tarball}`,
  );
}

/** Only what is needed to run, to compile against, and to look things up. */
function lookInside() {
  const folder = join(home, 'node_modules/tickover');
  const found = readdirSync(folder).sort().join(' ');
  must(found === 'LICENSE README.md dist docs package.json scenarios', `the package holds ${found}`);
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const strange = files.filter((name) => /\.(?:test\.|map$|ts$(?<!\.d\.ts)|tsbuildinfo)/.test(name));
  must(strange.length === 0, `these files are of no use to a stranger: ${strange.join(', ')}`);
}

function askVersion() {
  const { version } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8'));
  const said = output(home, 'npx', '--no-install', 'tickover', '--version').trim();
  must(said === version, `tickover --version said "${said}", package.json says "${version}"`);
}

function runScenario() {
  copyFileSync(join(home, 'node_modules/tickover/scenarios', scenario), join(home, scenario));
  const text = output(home, 'npx', '--no-install', 'tickover', 'run', scenario, '--out', './out', '--json');
  const kind = JSON.parse(text).outcome?.kind;
  must(typeof kind === 'string', `the JSON of tickover run has no outcome.kind: ${text.slice(0, 300)}`);
  must(readdirSync(join(home, 'out')).length > 0, 'tickover run wrote nothing into ./out');
}

function importLibrary() {
  const count = output(
    home,
    process.execPath,
    '--input-type=module',
    '--eval',
    "console.log(Object.keys(await import('tickover')).length)",
  );
  must(Number(count) > 0, 'import("tickover") gave no exports');
}

/** odex ships no declarations of its own, so a user's compiler would stumble over any mention of it. */
function readDeclarations() {
  const folder = join(home, 'node_modules/tickover/dist');
  const leaks = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.d.ts'))
    .filter((name) => /['"]odex['"]/.test(readFileSync(join(folder, name), 'utf8')));
  must(leaks.length === 0, `these declarations mention odex: ${leaks.join(', ')}`);
}

/** A stranger's strict program, library declarations included; only complaints about our own files count. */
function compileAgainstLibrary() {
  const program =
    "import * as tickover from 'tickover';\nexport const names: string[] = Object.keys(tickover);\n";
  writeFileSync(join(home, 'stranger.ts'), program);
  const options = {
    noEmit: true,
    strict: true,
    exactOptionalPropertyTypes: true,
    module: 'nodenext',
    types: [],
  };
  const settings = { compilerOptions: { ...options, target: 'es2023' }, files: ['stranger.ts'] };
  writeFileSync(join(home, 'tsconfig.json'), JSON.stringify(settings));
  const { stdout } = spawnSync(toolPath('tsc'), ['--pretty', 'false'], { cwd: home, encoding: 'utf8' });
  const complaints = stdout.split('\n').filter((line) => line.includes('error TS'));
  const ours = complaints.filter((line) => !/^node_modules\/(?!tickover\/)/.test(line));
  must(ours.length === 0, ours.join('\n'));
}

/** @type {[string, () => void][]} */
const steps = [
  ['pack', pack],
  ['install the tarball', install],
  ['contents', lookInside],
  ['tickover --version', askVersion],
  ['tickover run', runScenario],
  ["import('tickover')", importLibrary],
  ['declarations', readDeclarations],
  ['compile against the library', compileAgainstLibrary],
];

try {
  for (const [name, step] of steps) {
    try {
      step();
      console.log(`pack smoke: ${name}: ok`);
    } catch (error) {
      console.error(`pack smoke: ${name}: FAILED\n${error instanceof Error ? error.message : String(error)}`);
      process.exitCode = 1;
      break;
    }
  }
} finally {
  rmSync(home, { recursive: true, force: true });
}
