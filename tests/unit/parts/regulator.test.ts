/** A regulator that droops, and fittings in the hose. */
import { describe, expect, it } from 'vitest';
import { conductanceFlow } from '../../../src/gas/conductance.ts';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { buildEngine } from '../../../src/model/engine.ts';
import {
  hoseConductance,
  hosePassage,
  outletPressure,
  regulatorPassage,
  supplyComplaints,
} from '../../../src/parts/supply.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const BAR = 1e5;
const SET = 4 * BAR;
const INLET = 8 * BAR;
const regulator = {
  inlet_pressure: INLET,
  sonic_conductance: 2e-8,
  critical_pressure_ratio: 0.3,
  droop: 0.5 * BAR,
};
const own = referenceSpec().supply;

describe('the pressure behind a regulator under a steady flow', () => {
  const supply = { ...own, pressure: SET, regulator };
  const at = (massFlow: number, inlet = INLET) => ({ inlet, temperature: 290, massFlow });

  it.each([3.9, 3.6, 2.8])('is %d bar where it passes just that flow', (outlet) => {
    const passed = regulatorPassage(regulator, SET, dryAir).massFlow(0, INLET, 290, outlet * BAR, 290, 0);
    expect(outletPressure(supply, dryAir, at(passed)) / BAR).toBeCloseTo(outlet, 4);
  });

  it('breaks down, to a tenth at which the search ends, under more than it passes wide open', () => {
    const most = conductanceFlow(
      dryAir,
      { sonicConductance: 2e-8, criticalPressureRatio: 0.3 },
      INLET,
      290,
      BAR,
    );
    expect(outletPressure(supply, dryAir, at(1.001 * most)) / SET).toBeCloseTo(0.1, 4);
  });

  it('is the set pressure without flow, or what there is in front of it', () => {
    expect(outletPressure(supply, dryAir, at(0))).toBeCloseTo(SET, -1);
    expect(outletPressure({ ...supply, regulator: undefined }, dryAir, at(1e-3))).toBe(SET);
    expect(outletPressure({ ...supply, regulator: undefined }, dryAir, at(1e-3, 3 * BAR))).toBe(3 * BAR);
  });
});

describe('a regulator set to 4 bar with a droop of half a bar', () => {
  const passage = regulatorPassage(regulator, SET, dryAir);
  const flowAgainst = (outlet: number, inlet = INLET): number =>
    passage.massFlow(0, inlet, 290, outlet, 290, 0);
  const wideOpen = (outlet: number, inlet = INLET): number =>
    conductanceFlow(dryAir, { sonicConductance: 2e-8, criticalPressureRatio: 0.3 }, inlet, 290, outlet);

  it('is shut at its set pressure and above', () => {
    for (const outlet of [SET, SET + 1, 6 * BAR]) expect(flowAgainst(outlet)).toBe(0);
  });

  it('opens in proportion', () => {
    for (const share of [0.1, 0.5, 0.9]) {
      const outlet = SET - share * 0.5 * BAR;
      expect(flowAgainst(outlet) / wideOpen(outlet)).toBeCloseTo(share, 9);
    }
  });

  it('is fully open one droop below, and no more than that further down', () => {
    for (const outlet of [3.5 * BAR, 2 * BAR, BAR])
      expect(flowAgainst(outlet) / wideOpen(outlet)).toBeCloseTo(1, 12);
  });

  it('passes nothing backwards, even when its inlet has fallen below its outlet', () => {
    expect(flowAgainst(3 * BAR, 2 * BAR)).toBe(0);
    expect(flowAgainst(3 * BAR, 3 * BAR)).toBe(0);
    expect(flowAgainst(6 * BAR, 2 * BAR)).toBe(0);
  });

  it('does not start or stop with a jump', () => {
    expect(flowAgainst(SET - 1)).toBeLessThan(1e-4 * flowAgainst(3.5 * BAR));
    expect(flowAgainst(2.9999 * BAR, 3 * BAR)).toBeLessThan(0.05 * flowAgainst(BAR, 3 * BAR));
  });

  it('cannot raise a pressure', () => {
    const complaintsAt = (inlet: number) =>
      supplyComplaints({ ...own, pressure: SET, regulator: { ...regulator, inlet_pressure: inlet } }, BAR);
    expect(complaintsAt(SET)).toEqual([]);
    expect(complaintsAt(SET - 1)).toMatchObject([{ path: ['regulator', 'inlet_pressure'] }]);
  });
});

describe('an engine behind a regulator', () => {
  const engine = buildEngine(referenceSpec({ supply: { regulator } }));

  it('has the hose as a volume of its own between two passages', () => {
    const [hose, chest] = engine.volumes;
    expect(hose!.fixedVolume! * 1e6).toBeCloseTo(201.06, 2);
    expect(chest!.fixedVolume! * 1e6).toBeCloseTo(60, 9);
    const row = engine.passages.filter(({ role }) => role === 'supply');
    expect(row.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['regulator', 0, 2],
      ['hose', 2, 3],
    ]);
    expect(engine.chest).toBe(3);
  });

  it('is fed at the pressure in front of it', () => {
    expect(engine.supply.pressure).toBe(INLET);
    expect(buildEngine(referenceSpec()).supply.pressure).toBe(own.pressure);
  });
});

describe('fittings', () => {
  const conductanceWith = (fitting_bore: number | undefined, fittings: number): number =>
    hoseConductance({ ...own, hose: { ...own.hose, fitting_bore, fittings } }).sonicConductance;

  it('of no bore given are none', () => {
    expect(conductanceWith(undefined, 1)).toBe(conductanceWith(undefined, 10));
  });

  it('take from the hose, the narrower and the more of them the more', () => {
    const bare = conductanceWith(undefined, 2);
    const bores = [8e-3, 6e-3, 5e-3, 4e-3, 2e-3].map((bore) => conductanceWith(bore, 2));
    const counts = [1, 2, 4, 10].map((count) => conductanceWith(5e-3, count));
    for (const row of [
      [bare, ...bores],
      [bare, ...counts],
    ])
      for (const [i, less] of row.slice(1).entries()) expect(less).toBeLessThan(row[i]!);
  });

  it('so narrow that they choke alone pass what one of them passes', () => {
    const one = conductanceWith(0.5e-3, 1);
    // C of a bore of 0.5 mm with a discharge coefficient of 0.7, 5.02 mm² per dm³/(s bar) (check of the orifice).
    expect(one).toBeCloseTo((0.7 * Math.PI * 0.25 ** 2) / 5.02e8, 11);
  });

  it('are part of the one passage that is the hose', () => {
    const narrow = { ...own, hose: { ...own.hose, fitting_bore: 4e-3, fittings: 2 } };
    const flow = (supply: typeof own): number =>
      hosePassage(supply, dryAir).massFlow(0, 4e5, 290, 3.5e5, 290, 0);
    expect(flow(narrow)).toBeLessThan(0.8 * flow(own));
  });
});
