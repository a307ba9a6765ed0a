/**
 * Many engines, measured on the built command (`npm run build` first): `node tests/bench/studies.mjs [engines]`. Prints what
 * has to be reached beside what was measured; nothing fails here.
 *
 *   throughput   engines a second and core through `sweep` with one worker, over those of the bare solver: ≥ 0.8
 *   efficiency   time with one worker over twice the time with two, on two cores: ≥ 0.85
 *   memory       peak of 50,000 rows over that of 500: at most 64 MB more
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { performance } from 'node:perf_hooks';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { optionOverrides, scenarioReader, settledRunning } from '../../dist/index.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const main = join(root, 'dist/cli/main.js');
const scenario = join(root, 'scenarios/cider-press.yaml');
const engines = Number(process.argv[2] ?? 2000);
const folder = mkdtempSync(join(tmpdir(), 'tickover-bench-'));

/** @param {number} count */
const pressures = (count) => `supply.pressure = 2.5 bar gauge to 3.5 bar gauge in ${count}`;
/** Engines that cannot be: rows cost little, files and queues do all they do. @param {number} count */
const impossible = (count) => `cylinder.rod_length = 20 mm to 29 mm in ${count}`;

/**
 * Wall-clock seconds and peak memory [MB] of a sweep.
 * @param {string} vary
 * @param {number} workers
 */
function swept(vary, workers) {
  const out = join(folder, `${Math.random()}`);
  const begun = performance.now();
  const args = [
    main,
    'sweep',
    scenario,
    '--vary',
    vary,
    '--workers',
    String(workers),
    '--out',
    out,
    '--quiet',
  ];
  const { status, stderr } = spawnSync('/usr/bin/time', ['-f', '%M', process.execPath, ...args], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  rmSync(out, { recursive: true });
  return { seconds: (performance.now() - begun) / 1000, megabytes: Number(stderr.trim()) / 1024 };
}

/** @param {number} count */
function bareSeconds(count) {
  const reader = scenarioReader(readFileSync(scenario, 'utf8'), scenario);
  if (!reader.ok) throw new Error('the demo does not read');
  const specs = Array.from({ length: count }, (_, i) => {
    const said = optionOverrides([`supply.pressure=${2.5 + i / (count - 1)} bar gauge`]);
    const reading = said.ok ? reader.read(said.overrides) : said;
    if (!reading.ok) throw new Error('an engine of the bench does not read');
    return reading.spec;
  });
  for (const spec of specs.slice(0, 20)) settledRunning(spec);
  const begun = performance.now();
  for (const spec of specs) settledRunning(spec);
  return (performance.now() - begun) / 1000;
}

const bare = bareSeconds(Math.min(engines, 200)) / Math.min(engines, 200);
const one = swept(pressures(engines), 1);
const two = swept(pressures(engines), 2);
console.log(`bare solver            ${(bare * 1000).toFixed(2)} ms an engine`);
console.log(`sweep, one worker      ${((one.seconds / engines) * 1000).toFixed(2)} ms an engine`);
console.log(`throughput             ${((bare * engines) / one.seconds).toFixed(2)}   at least 0.8`);
console.log(`efficiency, 2 workers  ${(one.seconds / (2 * two.seconds)).toFixed(2)}   at least 0.85`);
const [few, many] = [swept(impossible(500), 2), swept(impossible(50_000), 2)];
console.log(
  `memory                 ${few.megabytes.toFixed(0)} MB for 500 rows, ${many.megabytes.toFixed(0)} MB for 50,000   at most 64 MB more`,
);
rmSync(folder, { recursive: true });
