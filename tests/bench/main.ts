/**
 * `npm run bench`: ours against an explicit method and against SUNDIALS in C, on every shipped scenario. Ratios, with what
 * has to be reached beside them; nothing fails here. docs/benchmarks.md says what is measured and how.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSlopes, buildStartUp, type Built } from './c-programs.ts';
import { measureEngine, measureStartMap, type Measurement, type Programs } from './measure-engine.ts';
import { printReport } from './report.ts';

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
  const measurements = scenarios.map((name) => {
    console.error(`measuring ${name}`);
    const file = join(root, 'scenarios', name);
    return inOwnProcess('engine', file, folder, JSON.stringify(programs)) as Measurement;
  });
  const mapOf = (name: string): number => {
    console.error(`mapping ${name}`);
    return inOwnProcess('map', join(root, 'scenarios', `${name}.yaml`)) as number;
  };
  printReport(measurements, mapOf);
  rmSync(folder, { recursive: true });
}

const [task = '', ...words] = process.argv.slice(2);
const [first = '', second = '', third = '{}'] = words;
if (task === 'engine')
  console.log(JSON.stringify(measureEngine(first, second, JSON.parse(third) as Programs)));
else if (task === 'map') console.log(JSON.stringify(measureStartMap(first)));
else bench(task, first);
