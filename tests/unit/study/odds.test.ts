/** The odds of engines as built, for engines whose answers are formulas. */
import { describe, expect, it } from 'vitest';
import { conditions } from '../../../src/study/conditions/registry.ts';
import { oddsOf, type OddsTask } from '../../../src/study/odds.ts';
import type { Plan } from '../../../src/study/plan.ts';
import { randomFrom } from '../../../src/study/random.ts';
import { distribution, quantiles, rankCorrelation, share } from '../../../src/study/statistics.ts';
import { tolerances } from '../../../src/study/tolerances/registry.ts';
import { valuesOf } from '../../../src/study/variations/values.ts';
import { oddsWords } from '../../../src/verdict/studies/odds-words.ts';
import { fake, numberAt, settled, stalled } from './fake.ts';

const tolerance = (kind: string, values: Record<string, unknown>) =>
  tolerances.kinds
    .find((own) => own.kind === kind)!
    .choose(values)
    .build(null);
const speed = conditions.kinds.find((own) => own.kind === 'speed')!;

const one: Plan = { variations: [], count: 1, point: () => [] };

const task = (own: Partial<OddsTask>): OddsTask => ({
  plan: one,
  tolerances: [
    tolerance('spread', { setting: 'bore', plus_minus: '1 mm', shape: 'even' }),
    tolerance('spread', { setting: 'lap', plus_minus: '0.2 mm', shape: 'bell' }),
  ],
  conditions: [speed.choose({ at_least: 50 }).build(null)],
  engines: 2000,
  seed: 1,
  nominal: (_settings, path) => ({ text: path === 'bore' ? '50 mm' : '1 mm' }),
  ...own,
});

describe('odds', () => {
  const { ask } = fake((s) => settled({ speed: numberAt(s, 'bore') }));

  it('come near the true chance, which lies within the interval given', async () => {
    const [found] = await oddsOf(task({}), ask);
    expect(found!.runs.count).toBe(2000);
    expect(found!.holds.low).toBeLessThan(0.5);
    expect(found!.holds.high).toBeGreaterThan(0.5);
    expect(found!.holds.high - found!.holds.low).toBeLessThan(0.05);
  });

  it('tell how the speeds spread', async () => {
    const [found] = await oddsOf(task({}), ask);
    // Even between 49 and 51.
    expect(found!.spread.speed!.low).toBeCloseTo(49.1, 1);
    expect(found!.spread.speed!.median).toBeCloseTo(50, 1);
    expect(found!.spread.speed!.high).toBeCloseTo(50.9, 1);
    expect(found!.speeds).toHaveLength(41);
  });

  it('tell which tolerance matters', async () => {
    const [found] = await oddsOf(task({}), ask);
    expect(found!.influences.map((own) => own.tolerance.path)).toEqual(['bore', 'lap']);
    expect(found!.influences[0]!.withSpeed).toBeCloseTo(1, 6);
    expect(Math.abs(found!.influences[1]!.withSpeed)).toBeLessThan(0.08);
    expect(oddsWords(task({}), [found!]).statements.join(' ')).toContain('What matters most is bore');
  });

  it('are the same for the same seed, others for another', async () => {
    const texts = async (seed: number): Promise<string[]> => {
      const built: string[] = [];
      await oddsOf(task({ seed, engines: 20 }), ask, (own) => built.push(own.texts.join()));
      return built;
    };
    expect(await texts(3)).toEqual(await texts(3));
    expect(await texts(4)).not.toEqual(await texts(3));
  });

  it('give every variant the same luck', async () => {
    const variation = valuesOf(['load'], ['light', 'heavy']);
    const plan: Plan = { variations: [variation], count: 2, point: (n) => [variation.level(n)] };
    const built: string[][] = [[], []];
    const found = await oddsOf(task({ plan, engines: 50 }), ask, (own) =>
      built[own.point]!.push(own.texts.slice(1).join()),
    );
    expect(built[0]).toEqual(built[1]);
    expect(found.map(({ texts }) => texts)).toEqual([['light'], ['heavy']]);
  });

  it('count engines that do not run as failures', async () => {
    const odds = fake((s) => (numberAt(s, 'bore') < 49.5 ? stalled : settled({ speed: 99 })));
    const [found] = await oddsOf(task({}), odds.ask);
    expect(found!.runs.count).toBe(found!.holds.count);
    expect(found!.runs.count / 2000).toBeCloseTo(0.75, 1);
  });
});

describe('a size as built', () => {
  const draws = (shape: string): number[] => {
    const random = randomFrom(5);
    const own = tolerance('spread', { setting: 'bore', plus_minus: '3 mm', shape });
    return Array.from({ length: 4000 }, () => {
      const strayed = own.stray({ text: '50 mm' }, random);
      return strayed.ok ? Number.parseFloat(strayed.text) - 50 : NaN;
    });
  };
  const rms = (values: readonly number[]): number =>
    Math.sqrt(values.reduce((sum, x) => sum + x * x, 0) / values.length);

  it('lies within its limits, most of it near the middle', () => {
    const bell = draws('bell');
    expect(bell.every((x) => Math.abs(x) <= 3)).toBe(true);
    // Limits at three standard deviations; cutting the tails takes a little off.
    expect(rms(bell)).toBeGreaterThan(0.93);
    expect(rms(bell)).toBeLessThan(1.03);
    // Two thirds within one standard deviation.
    expect(bell.filter((x) => Math.abs(x) < 1).length / 4000).toBeCloseTo(0.683, 1);
  });

  it('or anywhere alike', () => {
    const even = draws('even');
    expect(even.every((x) => Math.abs(x) <= 3)).toBe(true);
    expect(rms(even)).toBeCloseTo(Math.sqrt(3), 1);
  });

  it('of a fit lies between the least and the most clearance', () => {
    const own = tolerance('fit', { setting: 'clearance', shape: 'even' });
    const random = randomFrom(1);
    const gaps = Array.from({ length: 500 }, () => {
      const strayed = own.stray({ text: 'H7/g6', diameter: 0.012 }, random);
      return strayed.ok ? Number.parseFloat(strayed.text) : NaN;
    });
    // 12 H7 is +18/0 µm, 12 g6 −6/−17 µm (ISO 286): radial clearance 3 to 17.5 µm.
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(3);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(17.5);
    expect(Math.min(...gaps)).toBeLessThan(4.5);
    expect(Math.max(...gaps)).toBeGreaterThan(16);
  });

  it('cannot be made of a value that is no fit, or has another unit', () => {
    expect(
      tolerance('fit', { setting: 'a', shape: 'bell' }).stray({ text: '8 um', diameter: 0.012 }, () => 0.5)
        .ok,
    ).toBe(false);
    expect(
      tolerance('spread', { setting: 'a', plus_minus: '1 mm', shape: 'bell' }).stray(
        { text: '5 cm' },
        () => 0.5,
      ).ok,
    ).toBe(false);
  });
});

describe('statistics', () => {
  it("gives Wilson's interval", () => {
    // 8 of 10: 0.490 to 0.943 (scipy.stats.binomtest(8, 10).proportion_ci(method='wilson')).
    const own = share(8, 10);
    expect(own.low).toBeCloseTo(0.49016, 4);
    expect(own.high).toBeCloseTo(0.94333, 4);
    expect(share(0, 10).low).toBe(0);
    expect(share(10, 10).high).toBeCloseTo(1, 12);
  });

  it("gives Spearman's correlation with ties", () => {
    // scipy.stats.spearmanr([1,2,2,4,5],[3,1,4,4,9]) = 0.7631578947
    expect(rankCorrelation([1, 2, 2, 4, 5], [3, 1, 4, 4, 9])).toBeCloseTo(0.7631578947, 9);
    expect(rankCorrelation([1, 1, 1], [1, 2, 3])).toBe(0);
  });

  it('gives quantiles and distributions, of nothing none', () => {
    expect(quantiles([])).toBeUndefined();
    expect(distribution([])).toEqual([]);
    expect(quantiles([3, 1, 2])?.median).toBe(2);
    expect(distribution([5, 1])[40]).toBe(5);
  });
});
