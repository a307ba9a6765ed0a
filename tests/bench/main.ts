/**
 * `npm run bench`: ours against an explicit method and against SUNDIALS in C, on every shipped scenario; and sweeps of many
 * engines. Ratios, with what has to be reached beside them; nothing fails here. docs/benchmarks.md says what is measured and how.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSlopes, buildStartUp, type Built } from './c-programs.ts';
import {
  measureDerivative,
  measureEngine,
  measureStartMap,
  type DerivativeCost,
  type Measurement,
  type Programs,
} from './measure-engine.ts';
import { printReport, type Measured } from './report.ts';
import { bareTime, benchStudies, othersLoad } from './studies.ts';

/** Where the derivative of an engine that does not run is looked at [rad/s]. */
const SPEED_WITHOUT_ANSWER = 30;

/** `npm run bench -- studies`. */
const STUDIES = 'studies';

/** One measurement in a process of its own; what it found comes back as JSON. */
function inOwnProcess(...words: readonly string[]): unknown {
  const self = fileURLToPath(import.meta.url);
  const done = spawnSync(process.execPath, ['--expose-gc', self, ...words], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (done.status !== 0) throw new Error(`the measurement of ${words[1] ?? ''} failed`);
  return JSON.parse(done.stdout);
}

function pathOf(built: Built, without: string): string | undefined {
  if (built.ok) return built.path;
  console.log(`${without}: ${built.why}`);
  return undefined;
}

function bench(root: string, wanted: string): void {
  const folder = mkdtempSync(join(tmpdir(), 'tickover-bench-'));
  const sources = join(root, 'tests/bench/c');
  const slopes = pathOf(buildSlopes(sources, folder), 'No derivative in C');
  const startUp = pathOf(buildStartUp(sources, folder), 'No start-ups with CVODE');
  const programs: Programs = { ...(slopes ? { slopes } : {}), ...(startUp ? { startUp } : {}) };
  const scenarios = readdirSync(join(root, 'scenarios')).filter(
    (name) => name.endsWith('.yaml') && name.includes(wanted),
  );
  console.log(`${cpus()[0]?.model ?? 'processor'} × ${cpus().length}, Node ${process.version}`);
  const built = JSON.stringify(programs);
  const measurements = scenarios.map((name): Measured => {
    console.error(`measuring ${name}`);
    const file = join(root, 'scenarios', name);
    const one = inOwnProcess('engine', file, folder, built) as Measurement;
    const speed = String(one.ours.settled?.speed ?? SPEED_WITHOUT_ANSWER);
    return { ...one, derivative: inOwnProcess('derivative', file, folder, built, speed) as DerivativeCost };
  });
  const mapOf = (name: string): number => {
    console.error(`mapping ${name}`);
    return inOwnProcess('map', join(root, 'scenarios', `${name}.yaml`)) as number;
  };
  printReport(measurements, mapOf);
  rmSync(folder, { recursive: true });
}

function benchOfStudies(root: string, load: number): void {
  const folder = mkdtempSync(join(tmpdir(), 'tickover-bench-'));
  benchStudies(root, folder, inOwnProcess('bare', root) as number, load);
  rmSync(folder, { recursive: true });
}

const [task = '', ...words] = process.argv.slice(2);
const [first = '', second = '', third = '{}', fourth = ''] = words;
const programs = JSON.parse(third) as Programs;
if (task === 'engine') console.log(JSON.stringify(measureEngine(first, second, programs)));
else if (task === 'derivative')
  console.log(JSON.stringify(measureDerivative(first, second, programs, Number(fourth))));
else if (task === 'map') console.log(JSON.stringify(measureStartMap(first)));
else if (task === 'bare') console.log(JSON.stringify(bareTime(first)));
else {
  const load = othersLoad();
  if (first !== STUDIES) bench(task, first);
  if (first === STUDIES || first === '') benchOfStudies(task, load);
}
