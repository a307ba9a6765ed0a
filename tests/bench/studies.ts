/**
 * Many engines, measured on the built command as a user runs it, beside the bare solver. Impossible engines stand for long
 * studies where memory is measured: their rows cost little to find, while queues, files and the page do all they do.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { optionOverrides } from '../../src/scenario/override.ts';
import { scenarioReader } from '../../src/scenario/read-scenario.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { ourSettledAnswer } from './ours.ts';
import { median, processorTime } from './processor-time.ts';
import { printTarget } from './report.ts';

const SCENARIO = 'scenarios/cider-press.yaml';
const ENGINES = 2000;

/** A sweep of so few shows what starting costs: threads, loading, compiling, the page. */
const TO_START = 200;
const [FEW_ROWS, MANY_ROWS] = [500, 50_000];

/** The bare solver is looked at over fewer: each engine costs it the same. */
const BARE = 300;
const WARM_UP = 40;

const LEAST_THROUGHPUT = 0.8;
const LEAST_EFFICIENCY = 0.85;
const MOST_MEGABYTES = 64;

const pressureOf = (share: number): string => `${2.5 + share} bar gauge`;
const pressures = (engines: number): string =>
  `supply.pressure = ${pressureOf(0)} to ${pressureOf(1)} in ${engines}`;
const impossible = (rows: number): string => `cylinder.rod_length = 20 mm to 29 mm in ${rows}`;

/** Processor time [s] that the bare solver takes for an engine, its compiling done. */
export function bareTime(root: string): number {
  const file = join(root, SCENARIO);
  const reader = scenarioReader(readFileSync(file, 'utf8'), file);
  if (!reader.ok) throw new Error(`${SCENARIO} does not read`);
  const specs = Array.from({ length: BARE }, (_, i): EngineSpec => {
    const said = optionOverrides([`supply.pressure=${pressureOf(i / (BARE - 1))}`]);
    const reading = said.ok ? reader.read(said.overrides) : said;
    if (!reading.ok) throw new Error('an engine of the bench does not read');
    return reading.spec;
  });
  for (const spec of specs.slice(0, WARM_UP)) ourSettledAnswer(spec);
  const begin = processorTime();
  for (const spec of specs) ourSettledAnswer(spec);
  return (processorTime() - begin) / BARE;
}

interface Swept {
  /** By the clock, and of all processors together [s]. */
  readonly clock: number;
  readonly processor: number;
  /** Largest that the process ever was. */
  readonly megabytes: number;
}

/** Run in the process that is measured: what it has used, as its last words. */
const lastWords = `import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const used = { processor: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 };
  console.error(JSON.stringify({ ...used, clock: performance.now() / 1000 }));
});`;

/** Confines a process to one core; part of util-linux, as the kernel's interface is. */
const ON_ONE_CORE = ['taskset', '--cpu-list', '0'];

function swept(
  root: string,
  folder: string,
  vary: string,
  workers: number,
  confined: readonly string[] = [],
): Swept {
  const out = join(folder, 'swept');
  const node = ['--import', `data:text/javascript,${encodeURIComponent(lastWords)}`];
  const command = [join(root, 'dist/cli/main.js'), 'sweep', join(root, SCENARIO), '--vary', vary];
  const args = [...node, ...command, '--workers', String(workers), '--out', out, '--quiet'];
  // `env` starts what it is told, through whatever confines it.
  const { status, stderr } = spawnSync('env', [...confined, process.execPath, ...args], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  rmSync(out, { recursive: true });
  return JSON.parse(stderr) as Swept;
}

/** Rounds of sweeps that are compared by the clock, by turns: others may want a processor for a while. */
const ROUNDS = 5;

type Sweeps = Readonly<Record<'one' | 'two' | 'oneCore', Swept>>;

/** One worker with all cores to itself, two, and one with all that goes by beside it on one core. */
function medianSweeps(root: string, folder: string): Sweeps {
  const ask = (workers: number, confined?: readonly string[]): Swept =>
    swept(root, folder, pressures(ENGINES), workers, confined);
  const rounds = Array.from({ length: ROUNDS }, (): Sweeps => ({
    one: ask(1),
    two: ask(2),
    oneCore: ask(1, ON_ONE_CORE),
  }));
  const middle = (which: keyof Sweeps): Swept => {
    const of = (what: keyof Swept): number => median(rounds.map((round) => round[which][what]));
    return { clock: of('clock'), processor: of('processor'), megabytes: of('megabytes') };
  };
  return { one: middle('one'), two: middle('two'), oneCore: middle('oneCore') };
}

/** How many others want the processors; to be asked before anything is measured here. */
export const othersLoad = (): number => loadavg()[0] ?? 0;

export function benchStudies(root: string, folder: string, bare: number, load: number): void {
  console.error(`measuring a sweep of ${ENGINES} engines`);
  const start = swept(root, folder, pressures(TO_START), 1);
  const { one, two, oneCore } = medianSweeps(root, folder);
  const [few, many] = [FEW_ROWS, MANY_ROWS].map((rows) => swept(root, folder, impossible(rows), 2));
  const each = (seconds: number): string => `${((1e3 * seconds) / ENGINES).toFixed(1)} ms`;
  console.log(`\nMany engines: sweeps of ${ENGINES} by the built command`);
  console.log(`an engine, processor time: bare solver ${each(bare * ENGINES)}, one worker`);
  console.log(
    `${each(one.processor)}, two ${each(two.processor)}; by the clock ${each(one.clock)}, ${each(two.clock)},`,
  );
  console.log(
    `one worker and all that goes by beside it on one core ${each(oneCore.clock)}. Two workers are ` +
      `${(one.clock / two.clock).toFixed(2)} times as fast as one that has both cores.`,
  );
  if (load > 0.5)
    console.log(`Others want the processors too (load ${load.toFixed(1)}): no word on efficiency.`);
  const throughput = (bare * (ENGINES - TO_START)) / (one.processor - start.processor);
  const efficiency = oneCore.clock / (2 * two.clock);
  const growth = many!.megabytes - few!.megabytes;
  printTarget(
    'throughput of a core in a sweep once it runs, in that of the bare solver',
    throughput,
    `at least ${LEAST_THROUGHPUT}`,
    throughput >= LEAST_THROUGHPUT,
  );
  printTarget(
    'efficiency on two cores, by the clock of all on one core',
    efficiency,
    `at least ${LEAST_EFFICIENCY}`,
    efficiency >= LEAST_EFFICIENCY,
  );
  printTarget(
    `memory for ${MANY_ROWS} rows beyond that for ${FEW_ROWS} (${few!.megabytes.toFixed(0)} MB), MB`,
    growth,
    `at most ${MOST_MEGABYTES}`,
    growth <= MOST_MEGABYTES,
  );
}
