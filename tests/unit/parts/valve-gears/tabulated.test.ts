/** Areas from a table: through every row, shut to the last bit where it says so, events at the ends of the shut stretch. */
import { describe, expect, it } from 'vitest';
import type { Table } from '../../../../src/kinds/parameter.ts';
import { tabulated } from '../../../../src/parts/valve-gears/tabulated.ts';
import { filled } from '../../../support/chosen.ts';
import { areaOf, context, DEGREE, eventDeviation, observedEvents } from './bench.ts';

/** Rows every 10°; an area in mm² for each crank angle in degrees. */
function tableOf(admission: (a: number) => number, exhaust: (a: number) => number): Table {
  const degrees = Array.from({ length: 37 }, (_, i) => 10 * i);
  const column = (law: (a: number) => number) => degrees.map((a) => 1e-6 * law(a % 360));
  return {
    file: 'areas.csv',
    argument: degrees.map((a) => a * DEGREE),
    columns: { admission_area: column(admission), exhaust_area: column(exhaust) },
  };
}

const openAcrossZero = (a: number): number => (a < 100 ? 20 - a / 5 : a > 340 ? a - 340 : 0);
const hump = (from: number, to: number) => (a: number) =>
  a <= from || a >= to ? 0 : 40 * Math.sin((Math.PI * (a - from)) / (to - from)) ** 2;

const chosen = (areas: Table, discharge = 0.7) =>
  tabulated.choose(filled(tabulated.parameters, { areas, discharge_coefficient: discharge }));

const areas = tableOf(openAcrossZero, hump(160, 330));
const gear = chosen(areas).build(context);

describe('a tabulated gear', () => {
  it('passes through every row, times the discharge coefficient', () => {
    for (const [i, angle] of areas.argument.entries()) {
      expect(areaOf(gear, 'admission')(angle)).toBeCloseTo(0.7 * areas.columns['admission_area']![i]!, 15);
      expect(areaOf(gear, 'exhaust')(angle)).toBeCloseTo(0.7 * areas.columns['exhaust_area']![i]!, 15);
    }
  });

  it('is shut between rows of zero', () => {
    for (let degrees = 100; degrees <= 340; degrees += 3)
      expect(areaOf(gear, 'admission')(degrees * DEGREE)).toBe(0);
  });

  it('has its events at the ends of the shut stretches, and edges nowhere else', () => {
    const { admission, cutOff, release, compression } = gear.events;
    const degrees = [admission, cutOff, release, compression].map((angle) => angle / DEGREE);
    for (const [i, expected] of [340, 100, 160, 330].entries()) expect(degrees[i]).toBeCloseTo(expected, 9);
    expect(gear.edges.map((angle) => Math.round(angle / DEGREE))).toEqual([100, 160, 330, 340]);
    // The slope is zero there: a while passes before anything is open to the last bit.
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-6);
  });

  it('opens at top dead centre when its first row does', () => {
    const own = chosen(tableOf(hump(0, 120), hump(170, 360))).build(context);
    expect(own.events.admission).toBe(0);
    expect(own.events.compression).toBe(0);
  });

  it.each([
    ['never shuts', tableOf((a) => 1 + openAcrossZero(a), hump(160, 330)), 'never shuts'],
    ['never opens', tableOf(() => 0, hump(160, 330)), 'never opens'],
    ['shuts for an instant only', tableOf((a) => (a === 200 ? 0 : 5), hump(160, 330)), 'never shuts'],
    ['opens twice', tableOf((a) => hump(0, 90)(a) + hump(200, 260)(a), hump(160, 330)), 'opens 2 times'],
  ])('that %s cannot be', (_fault, own, received) => {
    const [complaint, ...others] = chosen(own).complaints(context);
    expect(complaint?.received).toBe(`one in "areas.csv" that ${received}`);
    expect(others).toEqual([]);
    expect(chosen(areas).complaints(context)).toEqual([]);
  });
});
