/**
 * All cores at work on the engines of a study. A worker that dies takes only the engine it died of with it: the batch it
 * had is asked about again one by one.
 */
import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { InputError } from '../exit-codes.ts';
import { brokenOff, type Ask, type EngineAnswer, type SettingText } from '../../index.ts';
import { threads } from './threads.ts';

export interface Workers {
  readonly count: number;
  /** Engines of one task; the answers come in the order of the engines. */
  readonly ask: Ask;
  readonly close: () => Promise<void>;
}

const MOST_WORKERS = 256;

/** As many as were asked for, or as the machine has cores. */
export function workersOf(count = availableParallelism()): number {
  if (Number.isInteger(count) && count >= 1 && count <= MOST_WORKERS) return count;
  const found = Number.isNaN(count) ? 'no number' : String(count);
  throw new InputError(`--workers: expected a whole number from 1 to ${MOST_WORKERS}; found ${found}.`);
}

type Engines = readonly (readonly SettingText[])[];

const MOST_AT_ONCE = 8;

/**
 * Each thread compiles for itself, and V8 does so beside the thread, on a core that another thread wants. Plain machine code
 * from the first call on, which is quickly made, lets its optimiser wait three times as long and be asked for fewer functions.
 * Sweeps of 2000 engines with and without these two switches, by turns: with two threads on two cores 4.4 in place of 4.9 s by
 * the clock, and 8.2 in place of 9.1 of processor time. A thread by itself is the slower for it, by 6 to 9 %, as nobody else wants
 * the core on which its code is compiled; so it goes without. Either alone brings less. Only for the V8 of Node 20, on which that
 * was measured: later ones compile in other steps.
 */
const TO_COMPILE_LESS = process.versions.v8.startsWith('11.3.')
  ? ['--always-sparkplug', '--interrupt-budget=400000']
  : [];

/**
 * `script` answers each message, a batch of engines, with one; `data` is what it finds in its `workerData`. As many threads
 * as there are `engines` for begin to load at once.
 */
export function startWorkers(script: URL, data: unknown, count: number, engines = 1): Workers {
  if (count > 1) for (const flag of TO_COMPILE_LESS) setFlagsFromString(flag);
  const start = (): Worker =>
    new Worker(script, {
      workerData: data,
      // What an answer leaves behind is garbage at once; let the collector come before it has piled up, but not for every engine.
      resourceLimits: { maxYoungGenerationSizeMb: 12, maxOldGenerationSizeMb: 128 },
    });
  const pool = threads<Engines, readonly EngineAnswer[]>(start, { atOnce: engines, most: count });
  const batch = (engines: Engines): Promise<readonly EngineAnswer[]> =>
    pool.run(engines).catch(() => oneByOne(engines));
  const single = (engine: readonly SettingText[]): Promise<readonly EngineAnswer[]> =>
    pool.run([engine]).catch((error: unknown) => [brokenOff(broken(error))]);
  const oneByOne = async (engines: Engines): Promise<readonly EngineAnswer[]> => {
    const found: EngineAnswer[] = [];
    for (const engine of engines) found.push(...(await single(engine)));
    return found;
  };
  const ask: Ask = async (engines) => {
    const size = Math.min(MOST_AT_ONCE, Math.max(1, Math.ceil(engines.length / (4 * count))));
    const batches = Array.from({ length: Math.ceil(engines.length / size) }, (_, i) =>
      batch(engines.slice(i * size, (i + 1) * size)),
    );
    return (await Promise.all(batches)).flat();
  };
  return { count, ask, close: pool.close };
}

const broken = (error: unknown): string =>
  `The program broke off on this engine (${error instanceof Error ? error.message : String(error)}); please report it.`;
