/**
 * Spoilt scenarios, studies, sheets, notebooks and tables, read as the command reads them: each is taken or refused with its place
 * and what would be right. `ATTACKS` says how many; a failure names the seed that makes the file again.
 */
import { cpSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/cli/exit-codes.ts';
import { attachmentsOf, engineFromFile, textOf } from '../../src/cli/scenario-file.ts';
import { openStudy } from '../../src/cli/studies/open-study.ts';
import {
  problemListing,
  readAttempts,
  readBenchSheet,
  runEngine,
  type EngineSpec,
  type Problem,
} from '../../src/index.ts';
import { emptyFolder, projectRoot } from '../end-to-end/command.ts';
import { mutantOf, mutations } from './mutations.ts';
import { formFaults } from './said.ts';

const COUNT = Number(process.env['ATTACKS'] ?? 2000);
const RUNS = Number(process.env['ATTACK_RUNS'] ?? 6);
const LONGEST = 5000;

const shipped = join(projectRoot, 'scenarios');
const files = readdirSync(shipped, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(?:yaml|csv)$/u.test(name))
  .sort();
const folder = emptyFolder();
cpSync(shipped, folder, { recursive: true });

/** Tables, each with the file that names it. */
const tables = new Map(
  files
    .filter((name) => name.endsWith('.csv'))
    .map((name) => {
      const own = name.replace(/^.*\//u, '');
      const owner = files.find(
        (other) => other.endsWith('.yaml') && readFileSync(join(shipped, other), 'utf8').includes(own),
      );
      return [name, owner ?? ''] as const;
    }),
);

type Sheet = { readonly ok: true } | { readonly ok: false; readonly problems: readonly Problem[] };

function expectGood(reading: Sheet): void {
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
}

/** Reads a file as its command does; of a scenario, what it describes. */
function read(name: string, path: string): EngineSpec | undefined {
  if (name.startsWith('studies/')) {
    openStudy({ file: path, set: [] });
    return undefined;
  }
  if (name === 'bench/attempts.yaml') {
    expectGood(readAttempts(textOf(path), path, attachmentsOf(path)));
    return undefined;
  }
  if (name.startsWith('bench/') && name !== 'bench/press-as-drawn.yaml') {
    expectGood(readBenchSheet(textOf(path), path, attachmentsOf(path)));
    return undefined;
  }
  return engineFromFile(path);
}

interface Tried {
  /** What is wrong with how it ended. */
  readonly faults: readonly string[];
  readonly refused: boolean;
  readonly engine: EngineSpec | undefined;
}

function attempt(seed: number): Tried {
  const name = files[seed % files.length]!;
  const { ways, bytes } = mutantOf(readFileSync(join(shipped, name), 'utf8'), seed);
  // A table is read by way of the file that names it.
  const named = join(folder, tables.get(name) ?? name);
  const spoilt = tables.has(name) ? join(folder, name) : named.replace(/[^/]*$/u, 'mutant.yaml');
  const path = tables.has(name) ? named : spoilt;
  writeFileSync(spoilt, bytes);
  const who = `seed ${seed}, ${name}: ${ways.join(', ')}`;
  const begun = performance.now();
  const late = (): string[] => (performance.now() - begun > LONGEST ? [`${who}: too slow`] : []);
  try {
    const engine = read(tables.get(name) ?? name, path);
    return { faults: late(), refused: false, engine };
  } catch (error) {
    if (!(error instanceof InputError))
      return { faults: [`${who}: ${String(error)}`], refused: true, engine: undefined };
    const faults = formFaults(error.message).map((fault) => `${who}: ${fault}`);
    return { faults: [...late(), ...faults], refused: true, engine: undefined };
  } finally {
    if (tables.has(name)) cpSync(join(shipped, name), join(folder, name));
  }
}

describe('spoilt files', () => {
  const tried = Array.from({ length: COUNT }, (_, seed) => attempt(seed));

  it('are taken, or refused with place and cure', () => {
    expect(tried.flatMap(({ faults }) => faults)).toEqual([]);
  });

  it('are of every sort', () => {
    expect(files.length).toBeGreaterThan(30);
    expect([...tables.values()]).not.toContain('');
  });

  it('are really spoilt, but not all of them beyond use', () => {
    expect(Object.keys(mutations).length).toBeGreaterThan(25);
    const share = tried.filter(({ refused }) => refused).length / tried.length;
    expect(share).toBeGreaterThan(0.6);
    expect(share).toBeLessThan(0.95);
  });

  it('run to a named end when they are taken', () => {
    const engines = tried.flatMap(({ engine }) => engine ?? []);
    const step = Math.max(1, Math.floor(engines.length / RUNS));
    const chosen = engines.filter((_, i) => i % step === 0).slice(0, RUNS);
    expect(chosen.length).toBe(RUNS);
    for (const spec of chosen) {
      const { outcome } = runEngine(spec);
      expect(outcome.kind).toMatch(/^[a-z-]+$/u);
      expect(outcome.reason).not.toMatch(/NaN|undefined|Infinity|\[object/u);
      expect(outcome.kind).not.toBe('non-finite');
    }
  }, 120_000);
});

it('a message without place or cure, or with our inside in it, would be found', () => {
  expect(formFaults('f.yaml:3:4  bore: expected a length, received "NaN".')).toEqual([]);
  for (const line of [
    'bore: expected a length, received "5".',
    'f.yaml:3:4  bore: wrong.',
    'f.yaml:3:4  bore: expected a length, received undefined.',
    'f.yaml:3:4  bore: expected a length, received "\u001b[2J".',
    '    at read (main.js:3:4)',
  ])
    expect(formFaults(line), line).not.toEqual([]);
});
