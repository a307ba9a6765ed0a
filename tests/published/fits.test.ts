/** Limits and fits of ISO 286, the grades that ways of working hold, and the clearances they come to. */
import { describe, expect, it } from 'vitest';
import type { Clearance } from '../../src/kinds/parameter.ts';
import { clearanceOf } from '../../src/parts/fits/clearance.ts';
import { boreFinishes, rodFinishes } from '../../src/parts/fits/finishes.ts';
import { deviationsOf, type Toleranced } from '../../src/parts/fits/limits-of-size.ts';
import { grades, stepOf, steps, toleranceWidth } from '../../src/parts/fits/tolerance-grades.ts';
import { expectWithin } from '../support/expect-within.ts';

/** Without the noise of the unit, and without a minus before nothing. */
const micrometres = (length: number): number => Number((length * 1e6).toFixed(6)) + 0;

const fit = (hole: string, shaft: string): Toleranced => ({ by: 'fit', hole, shaft });

/** Deviations [µm] of hole and shaft from a nominal diameter [mm]. */
function limits(nominal: number, hole: string, shaft: string) {
  const { bore, rod } = deviationsOf(nominal * 1e-3, fit(hole, shaft));
  return {
    hole: [micrometres(bore.least), micrometres(bore.most)],
    shaft: [micrometres(rod.least), micrometres(rod.most)],
  };
}

/** Smallest and largest difference of the diameters [µm]. */
function diametral(nominal: number, own: Clearance): number[] {
  const { least, most } = clearanceOf(nominal * 1e-3, own);
  return [micrometres(2 * least), micrometres(2 * most)];
}

/** i = 0.45 D^⅓ + 0.001 D [µm], D the geometric mean of the step [mm]: what the grades are multiples of. */
function toleranceUnit(over: number, upTo: number): number {
  const d = Math.sqrt(over * upTo);
  return 0.45 * Math.cbrt(d) + 0.001 * d;
}

describe('tolerance grades (seen)', () => {
  // mechguru.com, "Standard tolerance zone size table"; engineersvault.blogspot.com, "Index of ISO hole and shaft".
  it.each([
    [6, [5, 8, 12, 18, 30, 48, 75]],
    [10, [6, 9, 15, 22, 36, 58, 90]],
    [18, [8, 11, 18, 27, 43, 70, 110]],
    [30, [9, 13, 21, 33, 52, 84, 130]],
    [50, [11, 16, 25, 39, 62, 100, 160]],
  ])('up to %s mm: %s µm for IT5 to IT11', (upTo, widths) => {
    const step = stepOf(upTo * 1e-3);
    expect(grades.map((grade) => toleranceWidth(grade, step))).toEqual(widths);
  });

  it('the unit they go by makes IT14, 400 units, 0.36 mm at 10 mm and 0.87 mm at 100 mm (seen)', () => {
    // questionai.com, "IT grade". Two figures printed.
    expect((400 * toleranceUnit(6, 10)) / 1e3).toBeCloseTo(0.36, 2);
    expect((400 * toleranceUnit(80, 120)) / 1e3).toBeCloseTo(0.87, 2);
    // Five grades up is ten times as wide.
    expect(10 * toleranceWidth('9', stepOf(0.01))).toBe(360);
  });

  it('lie within 10 % of 7, 10, 16, 25, 40, 64, 100 units (from memory)', () => {
    const multiples = [7, 10, 16, 25, 40, 64, 100];
    for (const [step, [over, upTo]] of steps.entries())
      for (const [i, grade] of grades.entries())
        expectWithin(toleranceWidth(grade, step), multiples[i]! * toleranceUnit(over, upTo), 0.1);
  });

  it.each([
    [3, -1],
    [3.001, 0],
    [6, 0],
    [6.001, 1],
    [10, 1],
    [18, 2],
    [30, 3],
    [50, 4],
    [50.001, -1],
  ])('%s mm is in step %s', (diameter, step) => {
    expect(stepOf(diameter * 1e-3)).toBe(step);
    // As a scenario in inches or micrometres may come to it.
    expect(stepOf(diameter * 1e-3 * (1 + 2 * Number.EPSILON))).toBe(step);
  });
});

describe('holes (seen)', () => {
  // Matthews, Aeronautical Engineer's Data Book, p. 227, metric fits from BS 4500.
  it.each([
    [5, 12, 18, 30, 75],
    [8, 15, 22, 36, 90],
    [12, 18, 27, 43, 110],
    [25, 21, 33, 52, 130],
    [40, 25, 39, 62, 160],
  ])('%s mm: H7 +%s, H8 +%s, H9 +%s, H11 +%s µm', (nominal, ...upper) => {
    const own = ['H7', 'H8', 'H9', 'H11'].map((hole) => limits(nominal, hole, 'h6').hole);
    expect(own).toEqual(upper.map((most) => [0, most]));
  });
});

describe('shafts (seen)', () => {
  // As above; 3 to 6 mm from JIS B 0401 in docs.steelcam.org, Sumitomo technical information p. 28, where the others are
  // the same. The data book misprints f7 of 6 to 10 mm as −12.
  it.each([
    [5, { g6: [-12, -4], h6: [-8, 0], f7: [-22, -10], h9: [-30, 0], d9: [-60, -30], e8: [-38, -20] }],
    [8, { g6: [-14, -5], h6: [-9, 0], f7: [-28, -13], h9: [-36, 0], d9: [-76, -40], e8: [-47, -25] }],
    [12, { g6: [-17, -6], h6: [-11, 0], f7: [-34, -16], h9: [-43, 0], d9: [-93, -50], e8: [-59, -32] }],
    [25, { g6: [-20, -7], h6: [-13, 0], f7: [-41, -20], h9: [-52, 0], d9: [-117, -65], e8: [-73, -40] }],
    [40, { g6: [-25, -9], h6: [-16, 0], f7: [-50, -25], h9: [-62, 0], d9: [-142, -80], e8: [-89, -50] }],
  ])('%s mm', (nominal, expected) => {
    const own = Object.keys(expected).map((shaft) => [shaft, limits(nominal, 'H7', shaft).shaft]);
    expect(Object.fromEntries(own)).toEqual(expected);
  });

  it('f and g follow 5.5 D^0.41 and 2.5 D^0.34 (from memory) to a micrometre', () => {
    for (const [over, upTo] of steps) {
      const d = Math.sqrt(over * upTo);
      const largest = (shaft: string): number => -limits(upTo, 'H7', shaft).shaft[1]!;
      expect(Math.abs(largest('f7') - 5.5 * d ** 0.41)).toBeLessThan(1);
      expect(Math.abs(largest('g6') - 2.5 * d ** 0.34)).toBeLessThan(1);
    }
  });
});

describe('fits', () => {
  it('50 H7/g6: hole 50.000 to 50.025, shaft 49.975 to 49.991, play 9 to 50 µm (seen)', () => {
    // rulesofthumb.info, engineering, limits and fits.
    expect(limits(50, 'H7', 'g6')).toEqual({ hole: [0, 25], shaft: [-25, -9] });
    expect(diametral(50, fit('H7', 'g6'))).toEqual([9, 50]);
    expect(micrometres(clearanceOf(0.05, fit('H7', 'g6')).mean)).toBe(14.75);
  });

  it.each([
    ['H7', 'g6', [5, 29]],
    ['H7', 'h6', [0, 24]],
    ['H8', 'f7', [13, 50]],
  ])('10 %s/%s: play in µm %s (derived)', (hole, shaft, play) => {
    expect(diametral(10, fit(hole, shaft))).toEqual(play);
  });

  it('of a gap are the gap, whatever the diameter', () => {
    expect(clearanceOf(1, { by: 'gap', gap: 8e-6 })).toEqual({ mean: 8e-6, least: 8e-6, most: 8e-6 });
  });
});

describe('what ways of working hold (seen)', () => {
  // Chart of process capability, Machine Drawing (Narayana, Kannaiah, Reddy; book probable), fig. 15.2, at
  // issuhub.com/view/index/5590?pageIndex=233; turning also kesugroup.com, "Machining precision and tolerance grades".
  it.each([
    ['drilled', '11'],
    ['rough bored', '11'],
    ['bored', '8'],
    ['reamed', '8'],
    ['honed', '7'],
    ['ground', '6'],
    ['lapped', '5'],
  ])('a %s bore: IT%s', (finish, grade) => {
    expect(boreFinishes.get(finish)).toBe(grade);
  });

  it.each([
    ['rough turned', '11'],
    // EN 10278 as reprinted at evgroupchina.com: round drawn bar from h9 upwards.
    ['drawn', '9'],
    ['turned', '8'],
    ['well turned', '7'],
    ['ground', '6'],
    ['lapped', '5'],
  ])('a %s rod: IT%s', (finish, grade) => {
    expect(rodFinishes.get(finish)).toBe(grade);
  });

  it.each([
    [12, 'drilled', 'drawn', 38.25],
    [12, 'reamed', 'turned', 13.5],
    [12, 'honed', 'lapped', 6.5],
    [50, 'honed', 'ground', 10.25],
  ])('%s mm, %s / %s: %s µm all round (derived)', (nominal, bore, rod, mean) => {
    const own = clearanceOf(nominal * 1e-3, { by: 'process', bore, rod });
    expect(micrometres(own.mean)).toBe(mean);
    expect(micrometres(own.least)).toBe(0);
    expect(micrometres(own.most)).toBe(2 * mean);
  });
});
