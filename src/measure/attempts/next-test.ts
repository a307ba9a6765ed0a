/**
 * Which single test would tell most: of every test at hand, by how much it would shrink what is not known, as the sum of
 * the variances of the logarithms (the A-criterion of experimental design). A reading need not be taken to know that: only
 * its slopes and its error count.
 */
import { learned, trace, type StraightReading } from '../../numerics/gaussian-knowledge.ts';
import type { Setting } from '../../kinds/parameter.ts';
import type { RunningConditions } from '../settled-answer.ts';
import { directTest } from '../unknowns.ts';
import { straightened, type Belief, type Bench } from './learning.ts';

export interface Candidate {
  /** What to do, beginning with a small letter. */
  readonly test: string;
  /** Share of the variance that it would take away. */
  readonly gain: number;
}

/** Standard errors, as shares, of what a bench test finds, of a speed and of an air flow: common practice, no source. */
const BENCH = 0.05;
const SPEED = 0.01;
const AIR = 0.03;

export function candidates(
  bench: Bench,
  changes: readonly Setting[],
  belief: Belief,
  last: RunningConditions | undefined,
): Candidate[] {
  const all = [...benchTests(belief), ...(last === undefined ? [] : runs(bench, changes, belief, last))];
  return all.sort((a, b) => b.gain - a.gain);
}

function gainOf({ knowledge }: Belief, readings: readonly StraightReading[]): number {
  const before = trace(knowledge.covariance);
  return before > 0 ? 1 - trace(learned(knowledge, readings).covariance) / before : 0;
}

const benchTests = (belief: Belief): Candidate[] =>
  belief.unknowns.flatMap((own, i) => {
    const test = directTest(own);
    if (test === undefined) return [];
    const slope = belief.unknowns.map((_, k) => Number(i === k));
    return [
      {
        test: `a bench test of kind “${test}” for ${own.path}`,
        gain: gainOf(belief, [{ slope, value: 0, error: BENCH }]),
      },
    ];
  });

/** The last run again with a flow meter, and at other pressures. */
function runs(
  bench: Bench,
  changes: readonly Setting[],
  belief: Belief,
  last: RunningConditions,
): Candidate[] {
  const room = bench.room.pressure;
  const pressure = last.supplyPressure ?? bench.engine.spec.supply.pressure;
  const states = [
    { factor: 1, words: 'at the pressure of the last run' },
    { factor: 0.8, words: 'with a fifth less pressure' },
    { factor: 1.25, words: 'with a quarter more pressure, if everything is rated for it' },
  ];
  return states.flatMap(({ factor, words }) => {
    const supplyPressure = room + factor * (pressure - room);
    const conditions = { ...last, supplyPressure, near: last.near * Math.sqrt(factor) };
    const line = straightened(bench, changes, belief, belief.knowledge.mean, conditions);
    if (line === undefined) return [];
    const speed = { slope: line.slopes.speed, value: 0, error: SPEED * line.answer.speed };
    const air = { slope: line.slopes.airFlow, value: 0, error: AIR * line.answer.airFlow };
    return [
      { test: `a run ${words}, speed read to 2 %`, gain: gainOf(belief, [speed]) },
      { test: `a run ${words}, with a flow meter too`, gain: gainOf(belief, [speed, air]) },
    ];
  });
}
