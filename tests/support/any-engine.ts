/**
 * Numbered engines from all over the declared ranges. Each number is an engine by itself, so that a failing one can be looked
 * at alone and a large number be shared out.
 */
import fc from 'fast-check';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { arbitraryEngine } from './arbitrary-engine.ts';

/** Shares of values that stray, in a hundred. Where all do, few engines move: those of the others are the harder ones. */
const STRAYS = [3, 15, 50, 100];

/** Longest engine times [s]; they set what a run may cost. */
const TIMES = [1, 3, 10];

const takeTurns = <T>(all: readonly T[], number: number): T => all[number % all.length]!;

export function anyEngine(number: number): EngineSpec {
  const engines = arbitraryEngine({
    longestTime: takeTurns(TIMES, number),
    strays: takeTurns(STRAYS, number),
  });
  const [spec] = fc.sample(engines, { numRuns: 1, seed: number });
  return spec!;
}
