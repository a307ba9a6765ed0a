/** The choked nozzle: constants and worked examples of gas-dynamics texts. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { areaInSeries, chokedFlow, nozzleFlow } from '../../src/gas/nozzle.ts';
import { expectWithin } from '../support/expect-within.ts';

const { specificGasConstant: R, heatCapacityRatio: gamma, criticalPressureRatio } = dryAir;
const hole = (diameter_mm: number): number => (Math.PI / 4) * (diameter_mm * 1e-3) ** 2;

describe('choked flow of air', () => {
  it('begins at a pressure ratio of 0.528 (seen)', () => {
    // Carvill, Mechanical Engineer's Data Handbook, p. 161; three figures printed.
    expect(criticalPressureRatio).toBeCloseTo(0.528, 3);
    const at = (ratio: number): number => nozzleFlow(dryAir, 1e-6, 7e5, 293.15, ratio * 7e5);
    expect(at(0.52)).toBe(at(0.1));
    expect(at(0.54)).toBeLessThan(at(0.528));
  });

  it('has ṁ√T/(A p) = 0.0404 s√K/m (from memory)', () => {
    // Gas-dynamics texts; three figures.
    expectWithin(dryAir.chokedFlowFactor, 0.0404, 1e-3);
  });

  it('is 0.685 p A/√(R T) (seen)', () => {
    // White, Fluid Mechanics, 8th edition, problem 3.27; three figures.
    const flow = chokedFlow(dryAir, 1, 1e5, 300);
    expect((flow * Math.sqrt(R * 300)) / 1e5).toBeCloseTo(0.685, 3);
  });

  it('leaves a reservoir of 680 kPa, 560 K at 433.0 m/s and 466.67 K (seen)', () => {
    // Korpela, Principles of Turbomachinery, 2nd edition, problem 3.1, with R = 287: half of 0.05 J/(kg K) is 0.01 %.
    const throat = 560 * criticalPressureRatio ** ((gamma - 1) / gamma);
    const density = (680e3 * criticalPressureRatio) / (R * throat);
    const speed = nozzleFlow(dryAir, 1, 680e3, 560, 101.3e3) / density;
    expect(throat).toBeCloseTo(466.67, 2);
    expect(Math.abs(speed - 433)).toBeLessThan(0.1);
  });

  it('through a 1 mm hole from 6 bar gauge at 20 °C is 1.300 g/s (derived)', () => {
    expectWithin(nozzleFlow(dryAir, hole(1), 7.01325e5, 293.15, 101_325), 1.3e-3, 1e-3);
  });

  // Rule of thumb of leak testing, liwo.com/leak-rate: powers of ten only, so within a factor of two.
  it.each([
    [1, 100],
    [0.1, 1],
    [0.01, 0.01],
  ])('a hole of %s mm leaks %s mbar l/s from 1 bar into a vacuum (seen)', (diameter, leak) => {
    const flow = nozzleFlow(dryAir, hole(diameter), 1e5, 293.15, 1);
    const mbarLitres = (flow * R * 293.15) / 0.1;
    expect(mbarLitres / leak).toBeGreaterThan(0.5);
    expect(mbarLitres / leak).toBeLessThan(2);
  });
});

describe('effective areas in series', () => {
  it('two of 10 mm² make 7.071 mm² (rule seen, number derived)', () => {
    // 1/S² = Σ 1/Sᵢ²: Nikkei pneumatic dictionary, "effective area", techon.nikkeibp.co.jp, 15 May 2006.
    expectWithin(areaInSeries(10, 10), 7.071, 1e-4);
  });
});
