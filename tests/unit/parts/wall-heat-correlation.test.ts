/** Wall heat by correlation, against a reckoning by hand. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { wallHeats } from '../../../src/parts/wall-heat/registry.ts';
import { chosen } from '../../support/chosen.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { context } from './valve-gears/bench.ts';

const wall = (wall_temperature?: number) =>
  chosen(wallHeats, 'correlation', { wall_temperature }).build(context);

/** Heat transfer coefficient [W/(m² K)] in a bore of 50 mm with a stroke of 60 mm. */
const coefficient = (temperature: number, pressure: number, speed: number): number =>
  wall(temperature + 1).flow(1, temperature, pressure, speed);

describe('air of 300 K and 4 bar in a cylinder of 50 × 60 mm', () => {
  it('at 600 rpm: 1.2 m/s, Re 1.51e4, Nu 95.1, 49.7 W/(m² K) (derived)', () => {
    // ρ = 4e5/(287.05 · 300) = 4.645 kg/m³, μ = 1.846e-5 Pa s, k = 1004.7 · 1.846e-5/0.71 = 0.02612 W/(m K).
    const reynolds = (4.645 * 1.2 * 0.05) / 1.846e-5;
    const nusselt = 0.053 * reynolds ** 0.8 * 0.71 ** 0.6;
    expectWithin(reynolds, 1.51e4, 2e-3);
    expectWithin(dryAir.viscosity(300), 1.846e-5, 1e-3);
    expectWithin(coefficient(300, 4e5, 20 * Math.PI), (nusselt * 0.02612) / 0.05, 1e-3);
    expectWithin(coefficient(300, 4e5, 20 * Math.PI), 49.68, 1e-3);
  });

  it('grows with speed and pressure to the power 0.8', () => {
    const here = coefficient(300, 4e5, 30);
    expectWithin(coefficient(300, 8e5, 30), 2 ** 0.8 * here, 1e-12);
    expectWithin(coefficient(300, 4e5, 60), 2 ** 0.8 * here, 1e-12);
  });
});

describe('the heat', () => {
  it('goes with the area and the difference of temperatures, towards the colder', () => {
    const flow = wall(300).flow(0.01, 250, 3e5, 30);
    expect(flow).toBeGreaterThan(0);
    expectWithin(wall(300).flow(0.02, 250, 3e5, 30), 2 * flow, 1e-12);
    expect(wall(300).flow(0.01, 350, 3e5, 30)).toBeLessThan(0);
    expect(wall(300).flow(0.01, 300, 3e5, 30)).toBe(0);
  });

  it('without a wall temperature comes from a wall at that of the room', () => {
    expect(wall().flow(0.01, context.atmosphericTemperature, 3e5, 30)).toBe(0);
  });

  it('is none at rest', () => {
    expect(Math.abs(wall(400).flow(0.01, 250, 3e5, 0))).toBe(0);
  });
});
