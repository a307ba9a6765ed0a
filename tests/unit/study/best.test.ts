/** The best setting of engines whose answers are formulas. */
import { describe, expect, it } from 'vitest';
import { bestSetting } from '../../../src/study/best.ts';
import type { BestTask } from '../../../src/study/best-search.ts';
import { aims } from '../../../src/study/aims/registry.ts';
import { conditions } from '../../../src/study/conditions/registry.ts';
import { rangeOf } from '../../../src/study/variations/range.ts';
import { valuesOf } from '../../../src/study/variations/values.ts';
import { bestWords } from '../../../src/verdict/studies/best-words.ts';
import { fake, numberAt, settled, stalled } from './fake.ts';

const aim = (kind: string) =>
  aims.kinds
    .find((own) => own.kind === kind)!
    .choose({})
    .build(null);
const condition = (kind: string, values: Record<string, unknown>) =>
  conditions.kinds
    .find((own) => own.kind === kind)!
    .choose(values)
    .build(null);

const x = rangeOf(['x'], { from: 0, to: 10, unit: 'mm' }, 11);
const y = rangeOf(['y'], { from: -5, to: 5, unit: '%' }, 11);
const task = (own: Partial<BestTask>): BestTask => ({
  variations: [x],
  aim: aim('highest speed'),
  conditions: [],
  mostEngines: 200,
  ...own,
});

describe('the best of one setting', () => {
  it('is found between the steps of the first look, to a round value', async () => {
    const { ask } = fake((s) => settled({ speed: 30 - (numberAt(s, 'x') - 6.37) ** 2 }));
    const found = await bestSetting(task({}), ask);
    expect(found.best?.texts[0]).toMatch(/^6\.3[678] mm$/u);
    expect(found.walks[0]?.onBound).toBeUndefined();
    expect(found.walks[0]?.flat).toBeUndefined();
  });

  it('is said to be flat with the stretch on which hardly anything is lost', async () => {
    const { ask } = fake((s) => settled({ speed: 30 - 0.001 * (numberAt(s, 'x') - 5) ** 4 }));
    const found = await bestSetting(task({}), ask);
    const { flat } = found.walks[0]!;
    // 1 % of 30 is lost where 0.001 d⁴ = 0.3: d = 4.16.
    expect(Number.parseFloat(flat!.from)).toBeCloseTo(1, 0);
    expect(Number.parseFloat(flat!.to)).toBeCloseTo(9, 0);
    expect(bestWords(task({}), found).statements.join(' ')).toContain('The optimum is flat');
  });

  it.each([
    ['to', (at: number) => 10 + at],
    ['from', (at: number) => 30 - at],
  ])('is said to lie on the bound "%s"', async (bound, speed) => {
    const { ask } = fake((s) => settled({ speed: speed(numberAt(s, 'x')) }));
    const found = await bestSetting(task({}), ask);
    expect(found.walks[0]?.onBound).toBe(bound);
    expect(bestWords(task({}), found).statements.join(' ')).toContain('lies at the end of its range');
  });

  it('keeps to the conditions, and tells what they cost', async () => {
    const { ask } = fake((s) => settled({ speed: 10 + numberAt(s, 'x'), air: numberAt(s, 'x') / 60e3 }));
    const own = task({ conditions: [condition('air', { at_most: 4.2 / 60e3 })] });
    const found = await bestSetting(own, ask);
    expect(found.best?.holds).toBe(true);
    expect(Number.parseFloat(found.best!.texts[0]!)).toBeGreaterThan(4.1);
    expect(Number.parseFloat(found.best!.texts[0]!)).toBeLessThanOrEqual(4.2);
    expect(bestWords(own, found).statements.join(' ')).toContain('The conditions cost something');
  });

  it('goes past engines that do not run', async () => {
    const { ask } = fake((s) => (numberAt(s, 'x') > 7 ? stalled : settled({ speed: 10 + numberAt(s, 'x') })));
    const found = await bestSetting(task({}), ask);
    expect(Number.parseFloat(found.best!.texts[0]!)).toBeGreaterThan(6.9);
  });

  it('says which comes closest when none will do', async () => {
    const { ask } = fake((s) => settled({ speed: numberAt(s, 'x') }));
    const own = task({ conditions: [condition('speed', { at_least: 12 })] });
    const found = await bestSetting(own, ask);
    expect(found.best).toBeUndefined();
    expect(found.closest?.texts).toEqual(['10 mm']);
    expect(bestWords(own, found).headline).toContain('None of');
  });
});

describe('the best of several settings', () => {
  it('is found by a simplex along a slanting ridge', async () => {
    const { ask, asked } = fake((s) => {
      const [a, b] = [numberAt(s, 'x') - 7, numberAt(s, 'y') - 1.5];
      return settled({ speed: 100 - (a + b) ** 2 - 8 * (a - b) ** 2 });
    });
    const found = await bestSetting(task({ variations: [x, y], mostEngines: 300 }), ask);
    expect(found.closed).toBe(true);
    expect(Number.parseFloat(found.best!.texts[0]!)).toBeCloseTo(7, 0);
    expect(Number.parseFloat(found.best!.texts[1]!)).toBeCloseTo(1.5, 0);
    expect(found.best!.score!).toBeGreaterThan(99.9);
    expect(asked.length).toBeLessThanOrEqual(300 + 2 * 23);
  });

  it('tries every word, each with the best of the ranges for it', async () => {
    const words = valuesOf(['w'], ['dull', 'bright']);
    const { ask } = fake((s) => {
      const bright = s.some(({ path, value }) => path === 'w' && value === 'bright');
      const at = numberAt(s, 'x');
      return settled({ speed: bright ? 40 - (at - 2) ** 2 : 30 - (at - 8) ** 2 });
    });
    const found = await bestSetting(task({ variations: [words, x] }), ask);
    expect(found.best?.texts[0]).toBe('bright');
    expect(Number.parseFloat(found.best!.texts[1]!)).toBeCloseTo(2, 1);
  });

  it('stops when as many engines as allowed were tried, and says so', async () => {
    const { ask, asked } = fake((s) =>
      settled({ speed: 100 - Math.abs(numberAt(s, 'x') - 7.777) - Math.abs(numberAt(s, 'y')) }),
    );
    const own = task({ variations: [x, y], mostEngines: 20 });
    const found = await bestSetting(own, ask);
    expect(found.closed).toBe(false);
    expect(asked.length).toBeLessThanOrEqual(20 + 3 + 2 * 23);
    expect(bestWords(own, found).statements.join(' ')).toContain('cut short');
  });
});

describe('aims', () => {
  it('may want less of something', async () => {
    const { ask } = fake((s) => settled({ airPerWork: 5 + (numberAt(s, 'x') - 3) ** 2 }));
    const found = await bestSetting(task({ aim: aim('least air per work') }), ask);
    expect(Number.parseFloat(found.best!.texts[0]!)).toBeCloseTo(3, 1);
  });

  it('may set values of their own: a brake that holds the engine at a speed', () => {
    const torque = aims.kinds
      .find((own) => own.kind === 'most torque')!
      .choose({ at_speed: (200 * Math.PI) / 30 });
    expect(torque.build(null).settings).toEqual([
      { path: 'load.kind', value: 'formula' },
      { path: 'load.torque', value: 'rpm - 200' },
    ]);
  });
});
