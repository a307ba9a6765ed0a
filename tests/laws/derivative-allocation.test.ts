/**
 * The derivative makes no objects. Measured in a process of its own: nothing is kept, and what passes is only the numbers
 * that the engine of Node.js boxes when one function hands them to another.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { describe, expect, it } from 'vitest';

/** So many that what the compilers still do with the first of them is nothing per call. */
const CALLS = 50_000;

/** Bytes: boxed numbers of six hand-overs between the kernel and laws that it asks for, and half as much to spare. */
const BOXED_NUMBERS = 150;

const program = `
  import { initialState } from '../../src/model/initial-state.ts';
  import { systemOf } from '../support/drive.ts';
  import { discGear, referenceSpec, spoolGear } from '../support/reference-engine.ts';
  const system = systemOf(referenceSpec({ valve_gear: process.argv[2] === 'disc' ? discGear() : spoolGear() }));
  const y = initialState(system, 0.5, 20);
  const slopes = new Float64Array(system.dimension);
  const call = (times) => {
    for (let i = 0; i < times; i += 1) {
      y[0] = 0.5 + i * 1e-4;
      system.timeSlopes(1, y, slopes);
    }
  };
  call(3 * ${CALLS});
  gc();
  const before = process.memoryUsage();
  call(${CALLS});
  const passing = process.memoryUsage();
  gc();
  const kept = process.memoryUsage();
  console.log(JSON.stringify({
    numbers: (passing.heapUsed - before.heapUsed) / ${CALLS},
    arrays: (passing.arrayBuffers - before.arrayBuffers) / ${CALLS},
    kept: (kept.heapUsed - before.heapUsed) / ${CALLS},
  }));
`;

interface Bytes {
  readonly numbers: number;
  readonly arrays: number;
  readonly kept: number;
}

function bytesPerCall(gear: string): Bytes {
  const { outputFiles } = buildSync({
    stdin: { contents: program, loader: 'ts', resolveDir: fileURLToPath(new URL('.', import.meta.url)) },
    bundle: true,
    platform: 'node',
    format: 'esm',
    write: false,
  });
  // A nursery that holds all that passes, so that nothing is swept away before it is measured.
  const nursery = ['--expose-gc', '--min-semi-space-size=128', '--max-semi-space-size=128'];
  const { stdout, stderr } = spawnSync(process.execPath, [...nursery, '--input-type=module', '-', gear], {
    input: outputFiles[0]!.text,
    encoding: 'utf8',
  });
  if (stdout === '') throw new Error(stderr);
  return JSON.parse(stdout) as Bytes;
}

describe.each(['spools', 'disc'])('with %s', (gear) => {
  it('a call keeps nothing and makes no array', () => {
    const { numbers, arrays, kept } = bytesPerCall(gear);
    expect(kept).toBeLessThan(10);
    expect(arrays).toBeLessThan(1);
    expect(numbers).toBeGreaterThan(0);
    expect(numbers).toBeLessThan(BOXED_NUMBERS);
  });
});
