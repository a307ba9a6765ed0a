/** The statistics of `odds` against those of SciPy and NumPy: rank correlation with ties, Wilson's interval, quantiles. */
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/study/random.ts';
import { distribution, quantiles, rankCorrelation, share } from '../../src/study/statistics.ts';

const random = randomFrom(11);
const numbers = (count: number, round: number): number[] =>
  Array.from({ length: count }, () => Math.round(random() * round) / round);

/** Coarsely rounded numbers are often equal. */
const pairs = [
  [3, 10],
  [50, 1e6],
  [200, 12],
  [200, 2],
].map(([count, round]) => {
  const a = numbers(count!, round!);
  // Half of it the same thing, half of it chance.
  const b = numbers(count!, round!).map((own, i) => own - a[i]!);
  return { a, b };
});
const shares = [
  [0, 20],
  [1, 20],
  [137, 200],
  [400, 400],
] as const;

const script = `
import json, sys
import numpy
from scipy.stats import binomtest, spearmanr
given = json.load(sys.stdin)
def wilson(count, of):
    found = binomtest(count, of).proportion_ci(method='wilson')
    return [found.low, found.high]
print(json.dumps({
    'correlations': [spearmanr(own['a'], own['b']).correlation for own in given['pairs']],
    'intervals': [wilson(*own) for own in given['shares']],
    'quantiles': [numpy.quantile(own['a'], [0.05, 0.5, 0.95]).tolist() for own in given['pairs']],
}))
`;

interface Answer {
  readonly correlations: readonly number[];
  readonly intervals: readonly (readonly [number, number])[];
  readonly quantiles: readonly (readonly number[])[];
}

function scipy(): Answer {
  const input = JSON.stringify({ pairs, shares });
  const done = spawnSync('/usr/bin/python3', ['-c', script], { input, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(done.stderr);
  return JSON.parse(done.stdout) as Answer;
}

describe('statistics as SciPy has them', () => {
  const theirs = scipy();

  it.each(pairs.map((own, i) => [own.a.length, own, i] as const))(
    'rank correlation of %i pairs',
    (_count, { a, b }, i) => {
      expect(rankCorrelation(a, b)).toBeCloseTo(theirs.correlations[i]!, 12);
    },
  );

  it.each(shares.map((own, i) => [...own, i] as const))("Wilson's interval of %i in %i", (count, of, i) => {
    const { low, high } = share(count, of);
    // Their point of the normal distribution has more digits than ours.
    expect(low).toBeCloseTo(theirs.intervals[i]![0], 7);
    expect(high).toBeCloseTo(theirs.intervals[i]![1], 7);
  });

  it('quantiles, between neighbours in proportion', () => {
    const ours = pairs.map(({ a }) => quantiles(a)!);
    expect(ours.map(({ low, median, high }) => [low, median, high])).toEqual(theirs.quantiles);
    expect(distribution(pairs[0]!.a)[20]).toBe(ours[0]!.median);
  });
});
