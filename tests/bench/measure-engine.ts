/**
 * All that is measured of one engine. In a process of its own: code that has seen several engines is compiled for none of
 * them.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { readScenario, type EngineSpec } from '../../src/index.ts';
import { buildEngine, type Engine } from '../../src/model/engine.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import { doubles, kernel } from '../../src/numerics/kernel.ts';
import { numbersOf } from './c-programs.ts';
import { cvodeStartUp, type CvodeStartUp } from './cvode.ts';
import { engineFile, NotInC, sharedWithC } from './engine-file.ts';
import { loosestOdexTolerance, odexSpinUp } from './odex-spin-up.ts';
import { ourSettledAnswer, ourStartMap } from './ours.ts';
import { median, medianTime, processorTime, timesOf } from './processor-time.ts';
import { sampleStates } from './sample-states.ts';
import { PUSHES, type Push, type Turn } from './task.ts';

/** Programs that could be built, by path. */
export interface Programs {
  readonly slopes?: string;
  readonly startUp?: string;
}

export interface OwnAnswer {
  /** None when it does not settle. */
  readonly settled?: Turn;
  readonly outcome: string;
  /** The very first time, and the median of many [s]. */
  readonly firstTime: number;
  readonly time: number;
  readonly derivativeCalls: number;
  readonly turns: number;
}

export interface OdexAnswer {
  readonly push: Push;
  readonly tolerance: number;
  readonly last: Turn;
  readonly time: number;
  readonly derivativeCalls: number;
  readonly turns: number;
}

export interface DerivativeCost {
  /** Of one call [s]. */
  readonly ours: number;
  readonly c?: number;
  /** Of the two, each batch of ours beside one of C made right after it. */
  readonly ratio?: number;
  /** Bytes that a call leaves to be collected, and by which a million calls let the heap grow. */
  readonly garbage: number;
  readonly growth: number;
}

export interface Measurement {
  readonly name: string;
  readonly ours: OwnAnswer;
  readonly odex?: OdexAnswer;
  readonly cvode?: CvodeStartUp;
}

const REPEATS = { warm: 200, ours: 25, odex: 3, cvode: 7, batches: 15 };
const CALLS_PER_BATCH = 60_000;
const HEAP_CALLS = 1_000_000;
const GARBAGE_CALLS = 20_000;

export function readSpec(file: string): EngineSpec {
  const reading = readScenario(readFileSync(file, 'utf8'), file, (path) => ({
    ok: true,
    text: readFileSync(join(dirname(file), path), 'utf8'),
  }));
  if (!reading.ok) throw new Error(`${file} cannot be read`);
  return reading.spec;
}

function ownAnswer(spec: EngineSpec): Omit<OwnAnswer, 'time'> {
  const begin = processorTime();
  const { settled, outcome, counters } = ourSettledAnswer(spec);
  const firstTime = processorTime() - begin;
  // C needs no warming up, and a sweep or a slider asks thousands of times: after some two hundred Node has compiled most of it.
  for (let i = 0; i < REPEATS.warm; i += 1) ourSettledAnswer(spec);
  return {
    ...(settled ? { settled: { speed: settled.speed, air: settled.air.mass } } : {}),
    outcome: outcome.kind,
    firstTime,
    derivativeCalls: counters.derivativeCalls,
    turns: counters.turns,
  };
}

function odexAnswer(system: EngineSystem, least: Push, settled: Turn): OdexAnswer | undefined {
  const pushes = [least.speed, ...PUSHES.filter((speed) => speed > least.speed)];
  for (const speed of pushes) {
    const push = { ...least, speed };
    const tolerance = loosestOdexTolerance(system, push, settled);
    if (tolerance === undefined) continue;
    const spin = () => odexSpinUp(system, push, settled, tolerance);
    return { ...spin(), push, tolerance, time: medianTime(REPEATS.odex, spin) };
  }
  return undefined;
}

/** Words of the kernel's memory that no engine reaches. */
const STATES = 1_500_000;

/** Calls over all states in turn, as the steps of our method make them: in the kernel, where the states lie. */
function callDerivative(system: EngineSystem, states: readonly Float64Array[], calls: number): void {
  const slopes = STATES + states.length * system.dimension;
  for (const [i, state] of states.entries()) doubles.set(state, STATES + i * system.dimension);
  system.sit?.();
  for (let done = 0; done < calls; done += states.length)
    for (let state = STATES; state < slopes; state += system.dimension) kernel.timeSlopes(1, state, slopes);
}

/** Bytes on the heap after a collection, or as they are. */
function heap(collected: boolean): number {
  if (collected) globalThis.gc?.();
  return process.memoryUsage().heapUsed;
}

/** At the states of a turn at some speed. */
export function measureDerivative(
  file: string,
  folder: string,
  { slopes }: Programs,
  speed: number,
): DerivativeCost {
  const spec = readSpec(file);
  const own = buildEngine(spec);
  const system = engineSystem(own, { totals: false });
  const states = sampleStates(system, speed);
  const calls = states.length * Math.ceil(CALLS_PER_BATCH / states.length);
  const oneBatch = (): number => medianTime(1, () => callDerivative(system, states, calls)) / calls;
  const ours = median(Array.from({ length: REPEATS.batches }, oneBatch));
  const before = heap(true);
  callDerivative(system, states, HEAP_CALLS);
  const growth = heap(true) - before;
  const clean = heap(true);
  callDerivative(system, states, GARBAGE_CALLS);
  const garbage = (heap(false) - clean) / GARBAGE_CALLS;
  if (slopes === undefined) return { ours, garbage, growth };
  const engine = join(folder, `${basename(file)}.engine`);
  const sampled = join(folder, `${basename(file)}.states`);
  const rows = states.map((state) => sharedWithC(system, state).join(' '));
  writeFileSync(engine, engineFile(spec, own));
  writeFileSync(sampled, [states.length, ...rows].join('\n'));
  const batches = Array.from({ length: REPEATS.batches }, () => {
    const here = oneBatch();
    const [row] = numbersOf(slopes, engine, sampled, calls / states.length)!;
    return { here, there: row![0]! * 1e-9 };
  });
  return {
    ours: median(batches.map(({ here }) => here)),
    c: median(batches.map(({ there }) => there)),
    ratio: median(batches.map(({ here, there }) => here / there)),
    garbage,
    growth,
  };
}

/** Writes the engine for the C reference; without what that cannot reckon, it is measured alone. */
function writtenForC(path: string, spec: EngineSpec, engine: Engine): boolean {
  try {
    writeFileSync(path, engineFile(spec, engine));
    return true;
  } catch (error) {
    if (!(error instanceof NotInC)) throw error;
    console.error(error.message);
    return false;
  }
}

/** A third of the times of ours. */
const oursByThree = (spec: EngineSpec): number[] => timesOf(REPEATS.ours, () => ourSettledAnswer(spec));

export function measureEngine(file: string, folder: string, given: Programs): Measurement {
  const spec = readSpec(file);
  const name = basename(file, '.yaml');
  const ours = ownAnswer(spec);
  // Before, between and after the others: a machine may be slower for a while.
  const times = [oursByThree(spec)];
  const engine = buildEngine(spec);
  const path = join(folder, `${name}.engine`);
  const programs = writtenForC(path, spec, engine) ? given : {};
  const own: Push = { angle: spec.start.crank_angle, speed: spec.start.hand_speed };
  const cvode =
    ours.settled === undefined || programs.startUp === undefined
      ? undefined
      : cvodeStartUp(programs.startUp, path, own, REPEATS.cvode);
  times.push(oursByThree(spec));
  const push = cvode?.push ?? { ...own, speed: Math.max(own.speed, PUSHES[0]!) };
  const odex = ours.settled && odexAnswer(engineSystem(engine), push, ours.settled);
  times.push(oursByThree(spec));
  return {
    name,
    ours: { ...ours, time: median(times.flat()) },
    ...(odex ? { odex } : {}),
    ...(cvode ? { cvode } : {}),
  };
}

/** Median time [s] of a start map. */
export function measureStartMap(file: string): number {
  const spec = readSpec(file);
  const speed = ourSettledAnswer(spec).settled!.speed;
  return medianTime(3, () => {
    ourStartMap(spec, speed);
  });
}
