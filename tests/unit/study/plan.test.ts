/** Which engines a study has. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { practicalSteps } from '../../../src/study/practical-step.ts';
import { randomFrom } from '../../../src/study/random.ts';
import { settingsAt } from '../../../src/study/plan.ts';
import { samples } from '../../../src/study/samples/registry.ts';
import { rangeOf } from '../../../src/study/variations/range.ts';
import { valuesOf } from '../../../src/study/variations/values.ts';
import { LEFT_OUT, roundPart } from '../../../src/study/variations/variation.ts';
import { engineParameters } from '../../../src/parts/engine-description.ts';
import { scenarioReader } from '../../../src/scenario/read-scenario.ts';
import { readFileSync } from 'node:fs';

const sample = (kind: string, values: Record<string, unknown> = {}) =>
  samples.kinds.find((own) => own.kind === kind)!.choose(values);

const a = rangeOf(['a'], { from: 20, to: 80, unit: '% of stroke' }, 4);
const b = valuesOf(['b', 'c'], ['honed / lapped', 'drilled / turned', LEFT_OUT]);

describe('a range', () => {
  it('gives its ends as they are written and even steps between', () => {
    expect([0, 1, 2, 3].map(a.level)).toEqual([
      '20 % of stroke',
      '40 % of stroke',
      '60 % of stroke',
      '80 % of stroke',
    ]);
  });

  it('may go in equal ratios', () => {
    const own = rangeOf(['a'], { from: 1, to: 100, unit: 'um' }, 3, 'ratio');
    expect([0, 1, 2].map(own.level)).toEqual(['1 um', '10 um', '100 um']);
  });

  it('says rounding to nobody', () => {
    const own = rangeOf(['a'], { from: 0.1, to: 0.7, unit: 'mm' }, 7);
    expect(Array.from({ length: 7 }, (_, i) => own.level(i))).toEqual([
      '0.1 mm',
      '0.2 mm',
      '0.3 mm',
      '0.4 mm',
      '0.5 mm',
      '0.6 mm',
      '0.7 mm',
    ]);
  });

  it('knows a round part of itself', () => {
    expect(roundPart({ from: 20, to: 80, unit: '' }, 500)).toBeCloseTo(0.1, 12);
    expect(roundPart({ from: 80, to: 20, unit: '' }, 2000)).toBeCloseTo(0.01, 12);
  });
});

describe('values', () => {
  it('have a unit when all have the same', () => {
    expect(valuesOf(['a'], ['1 mm', '2.5 mm']).unit).toBe('mm');
    expect(valuesOf(['a'], ['1 mm', '2.5 cm']).unit).toBeUndefined();
    expect(valuesOf(['a'], ['H7/g6']).unit).toBeUndefined();
    expect(valuesOf(['a'], ['0.2', '0.3']).unit).toBe('');
    expect(b.unit).toBeUndefined();
  });

  it('go to all their paths, or are left out', () => {
    expect(settingsAt([a, b], ['20 % of stroke', 'honed / lapped']).map(({ path }) => path)).toEqual([
      'a',
      'b',
      'c',
    ]);
    expect(settingsAt([a, b], ['20 % of stroke', LEFT_OUT]).map(({ path }) => path)).toEqual(['a']);
  });
});

describe('a grid', () => {
  it('has every value with every other once, the last one changing first', () => {
    const { count, point } = sample('grid').build([a, b]);
    expect(count).toBe(12);
    expect(point(1)).toEqual(['20 % of stroke', 'drilled / turned']);
    expect(point(3)).toEqual(['40 % of stroke', 'honed / lapped']);
    expect(new Set(Array.from({ length: 12 }, (_, i) => point(i).join())).size).toBe(12);
  });

  it('of nothing is the engine itself', () => {
    expect(sample('grid').build([])).toMatchObject({ count: 1 });
  });

  it('refuses to be too large', () => {
    const own = rangeOf(['a'], { from: 0, to: 1, unit: '' }, 100_000);
    expect(sample('grid').complaints([own, own])).toHaveLength(1);
  });
});

describe('a list', () => {
  it('takes the values side by side, as many of each', () => {
    const c = rangeOf(['c'], { from: 1, to: 3, unit: 'mm' }, 3);
    expect(sample('list').complaints([b, c])).toEqual([]);
    expect(sample('list').build([b, c]).point(1)).toEqual(['drilled / turned', '2 mm']);
    expect(sample('list').complaints([a, b])).toHaveLength(1);
  });
});

describe('random numbers', () => {
  it('begin differently for seeds that look alike, and are even from the first on', () => {
    const firsts = Array.from({ length: 400 }, (_, seed) => randomFrom(seed)());
    expect(new Set(firsts).size).toBe(400);
    // The mean of 400 even numbers is within 0.05 of a half but once in a thousand times.
    expect(firsts.reduce((a, b) => a + b, 0) / 400).toBeCloseTo(0.5, 1);
    expect(firsts.filter((x) => x < 0.25).length / 400).toBeCloseTo(0.25, 1);
  });
});

describe('a space-filling sample', () => {
  it('puts as many engines into each half of every range, and is the same for the same seed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 - 1 }), (seed) => {
        const c = rangeOf(['c'], { from: 0, to: 1, unit: '' }, 2);
        const { point } = sample('space-filling', { engines: 64, seed }).build([a, c]);
        const points = Array.from({ length: 64 }, (_, i) => point(i));
        for (const [which, middle] of [50, 0.5].entries()) {
          const values = points.map((texts) => Number.parseFloat(texts[which]!));
          // As texts, those next to the middle may stand on it.
          expect(values.filter((value) => value < middle).length).toBeLessThanOrEqual(32);
          expect(values.filter((value) => value > middle).length).toBeLessThanOrEqual(32);
          expect(values.filter((value) => value === middle).length).toBeLessThanOrEqual(2);
        }
        expect(point(17)).toEqual(sample('space-filling', { engines: 64, seed }).build([a, c]).point(17));
      }),
      { numRuns: 20 },
    );
  });
});

describe('a practical step', () => {
  const text = readFileSync(new URL('../../../scenarios/cider-press.yaml', import.meta.url), 'utf8');
  const reader = scenarioReader(text, 'press.yaml');
  const given = reader.ok ? reader.given([]) : [];
  const stepsOf = (path: string) => {
    const own = given.find((other) => other.path === path)!;
    return practicalSteps(own.text, own.parameter);
  };

  it.each([
    ['cylinder.bore', '45 mm', '55 mm'],
    ['supply.pressure', '2.8 bar gauge', '3.2 bar gauge'],
    ['valve_gear.admission.closes', '45 % of stroke', '55 % of stroke'],
    ['valve_gear.admission.opens', '-10 deg', '0 deg'],
    ['leaks.0.clearance', '11 um', '13 um'],
    ['valve_gear.admission.clearance', 'ground / lapped', 'reamed / ground'],
  ])('of %s goes down to %s and up to %s', (path, down, up) => {
    expect(stepsOf(path)).toMatchObject({ down, up });
  });

  it('knows every value that the scenario gives, by its path', () => {
    expect(given.map(({ path }) => path)).toContain('leaks.0.length');
    expect(given.find(({ path }) => path === 'cylinder.bore')?.parameter).toBe(
      engineParameters.cylinder.parameters.bore,
    );
    expect(given.some(({ path }) => path.endsWith('kind'))).toBe(false);
  });
});
