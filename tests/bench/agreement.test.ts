/**
 * The derivative in C, which the bench measures ours against, says the same as ours on every shipped scenario: to 1e-9 of
 * the largest slope where openings are reckoned directly, to 2e-6 where our own tables had to be tabulated again.
 */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { buildEngine, type Engine } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import { buildSlopes, numbersOf } from './c-programs.ts';
import { engineFile, sharedWithC } from './engine-file.ts';
import { readSpec } from './measure-engine.ts';

const STATES = 120;

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const scenarios = path('../../scenarios');
const folder = mkdtempSync(join(tmpdir(), 'tickover-agreement-'));
const program = buildSlopes(path('c'), folder);
if (!program.ok) console.log(`C and ours are not compared: ${program.why}`);

afterAll(() => {
  rmSync(folder, { recursive: true });
});

const isTabulated = ({ passages }: Engine): boolean =>
  passages.some(({ passage: { flow } }) => typeof flow?.opening === 'object');

/** States all over two turns, at rising speeds, the gas in each volume off room air by another factor. */
function statesOf(system: EngineSystem): Float64Array[] {
  const { slots } = system;
  return Array.from({ length: STATES }, (_, i) => {
    const y = initialState(system, (4 * Math.PI * i) / STATES + 0.001, 2 + i);
    for (let slot = slots.mass(0); slot < slots.firstTotal; slot += 1)
      y[slot]! *= 1 + 3 * Math.abs(Math.sin(7 * i + 3 * slot));
    return y;
  });
}

describe.skipIf(!program.ok)('the derivative in C', () => {
  const names = readdirSync(scenarios).filter((name) => name.endsWith('.yaml'));

  it.each(names)('agrees on %s', (name) => {
    if (!program.ok) return;
    const spec = readSpec(join(scenarios, name));
    const engine = buildEngine(spec);
    const system = engineSystem(engine, { totals: false });
    const states = statesOf(system);
    const file = join(folder, basename(name, '.yaml'));
    writeFileSync(`${file}.engine`, engineFile(spec, engine));
    writeFileSync(
      `${file}.states`,
      [STATES, ...states.map((y) => sharedWithC(system, y).join(' '))].join('\n'),
    );
    const inC = numbersOf(program.path, `${file}.engine`, `${file}.states`)!;
    const slopes = new Float64Array(system.dimension);
    const ours = states.map((y) => {
      system.timeSlopes(1, y, slopes);
      return sharedWithC(system, slopes);
    });
    const largest = ours[0]!.map((_, k) => Math.max(...ours.map((row) => Math.abs(row[k]!))));
    const off = ours.flatMap((row, i) => row.map((slope, k) => Math.abs(slope - inC[i]![k]!) / largest[k]!));
    expect(Math.max(...off)).toBeLessThan(isTabulated(engine) ? 2e-6 : 1e-9);
  });
});
