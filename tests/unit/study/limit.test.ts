/** How far a value may go, for engines whose answers are formulas. */
import { describe, expect, it } from 'vitest';
import { conditions } from '../../../src/study/conditions/registry.ts';
import { limitOf, type LimitTask } from '../../../src/study/limit.ts';
import { processesWithin } from '../../../src/study/processes.ts';
import { limitWords } from '../../../src/verdict/studies/limit-words.ts';
import { fake, numberAt, settled, stalled } from './fake.ts';

const condition = (kind: string, values: Record<string, unknown> = {}) =>
  conditions.kinds
    .find((own) => own.kind === kind)!
    .choose(values)
    .build(null);

const task = (own: Partial<LimitTask>): LimitTask => ({
  paths: ['gap', 'other.gap'],
  ramp: { from: 2, to: 150, unit: 'um' },
  wanted: 'largest',
  conditions: [condition('speed', { at_least: 20 })],
  ...own,
});

describe('the largest value', () => {
  it('is found by the root of the margin, round and on the good side', async () => {
    const { ask, asked } = fake((s) => settled({ speed: 40 - 0.4 * numberAt(s, 'gap') ** 0.9 }));
    const found = await limitOf(task({}), ask);
    // 0.4 g^0.9 = 20
    const exact = 50 ** (1 / 0.9);
    expect(found.holds?.value).toBeLessThanOrEqual(exact);
    expect(found.holds?.value).toBeGreaterThan(exact - 0.021);
    expect(found.fails?.value).toBeGreaterThan(exact);
    expect(found.holds?.text).toMatch(/^\d+(\.\d{1,2})? um$/u);
    expect(found.givesWay).toBe(0);
    expect(asked.length).toBeLessThan(30);
    expect(asked.every((s) => s.length === 2 && s[1]?.path === 'other.gap')).toBe(true);
  });

  it('is found where an engine simply stops running', async () => {
    const { ask } = fake((s) => (numberAt(s, 'gap') > 77.777 ? stalled : settled({ speed: 30 })));
    const own = task({ conditions: [] });
    const found = await limitOf(own, ask);
    expect(found.holds?.value).toBeCloseTo(77.77, 1);
    expect(found.givesWay).toBeUndefined();
    expect(limitWords(own, found).statements[0]).toContain('It stops.');
  });

  it('may lie beyond the range, or nowhere', async () => {
    const good = await limitOf(task({}), fake(() => settled({ speed: 30 })).ask);
    expect(good.fails).toBeUndefined();
    expect(limitWords(task({}), good).headline).toContain('all the way to the end of the range, 150 um');
    const bad = await limitOf(task({}), fake(() => stalled).ask);
    expect(bad.holds).toBeUndefined();
    expect(limitWords(task({}), bad).headline).toMatch(/^Nowhere from 2 um to 150 um/u);
  });

  it('owns up to values short of it for which the condition fails', async () => {
    const { ask } = fake((s) =>
      numberAt(s, 'gap') < 30 || numberAt(s, 'gap') > 100 ? stalled : settled({ speed: 30 }),
    );
    const found = await limitOf(task({}), ask);
    expect(found.gaps).toBe(true);
    expect(found.holds?.value).toBeCloseTo(100, 1);
  });
});

describe('the smallest value', () => {
  it.each([[{ from: 2, to: 150, unit: 'um' }], [{ from: 150, to: 2, unit: 'um' }]])(
    'is looked for from the other side, whichever end stands first',
    async (ramp) => {
      const { ask } = fake((s) => (numberAt(s, 'gap') < 33.3 ? stalled : settled({ speed: 30 })));
      const found = await limitOf(task({ ramp, wanted: 'smallest' }), ask);
      expect(found.holds?.value).toBeCloseTo(33.3, 1);
      expect(found.fails!.value).toBeLessThan(33.3);
    },
  );
});

describe('a start from enough positions', () => {
  it('holds when exactly enough positions will do', async () => {
    const { ask } = fake((s) => settled({ speed: 30, startShare: numberAt(s, 'gap') <= 50 ? 0.8 : 0.75 }));
    const found = await limitOf(task({ conditions: [condition('starts unaided', { from: 0.8 })] }), ask);
    expect(found.holds?.value).toBeCloseTo(50, 1);
  });
});

describe('processes', () => {
  it('are the coarsest pairs whose limits stay within the clearance', () => {
    // 12 mm is in the step over 10 to 18 mm: IT7 18, IT8 27, IT11 110 µm; largest radial clearance (IT + IT)/2.
    const found = processesWithin(0.012, 27e-6)!;
    expect(found.surely).toEqual(['bored or reamed / turned', 'ground / drawn']);
    // h9 is 43 µm: 35 at most, 17.5 on average.
    expect(found.often).toEqual(['bored or reamed / drawn']);
  });

  it('are unknown where the tables do not go', () => {
    expect(processesWithin(0.5, 1e-5)).toBeUndefined();
  });
});
