/** Water that comes with the air: what is taken in either drops out or goes on, and only air from the room brings any. */
import { describe, expect, it } from 'vitest';
import { saturationPressure } from '../../src/gas/humid-air.ts';
import { moistureOf } from '../../src/run/moisture.ts';
import { expectWithin } from '../support/expect-within.ts';
import { referenceSpec } from '../support/reference-engine.ts';

const HOUR = 3600;
const compressor = {
  free_air_delivery: 2.5e-3,
  receiver_volume: 0.05,
  cut_in: 801_325,
  cut_out: 901_325,
  duty_rating: 0.5,
};
const shed = (relative_humidity: number, more: Parameters<typeof referenceSpec>[0] = {}) =>
  referenceSpec({ atmosphere: { temperature: 293.15, relative_humidity }, compressor, ...more });

describe('a compressor that takes in a kilogram of air an hour, 20 °C and 60 %', () => {
  const { takenIn, condensed, carriedOn, ...points } = moistureOf(shed(0.6), 1 / HOUR)!;

  it('gets 8.71 g of water with it, drops 6.88 g and sends on 1.82 g at 7 bar gauge (derived)', () => {
    // w = 0.622 e/(p − e): e = 1399.6 Pa in the room, 2332.6 Pa full in the receiver at 801.3 kPa.
    expectWithin(1e3 * HOUR * takenIn, 8.711, 1e-3);
    expectWithin(1e3 * HOUR * carriedOn, 1.816, 1e-3);
    expectWithin(condensed, takenIn - carriedOn, 1e-12);
  });

  it('begins to drop it at 47.8 °C under pressure, and lays down frost below −8.7 °C afterwards (derived)', () => {
    expect(Math.abs(points.pressureDewPoint - 273.15 - 47.8)).toBeLessThan(0.2);
    expect(Math.abs(points.roomDewPoint - 273.15 - 12)).toBeLessThan(0.1);
    // 2332.6 Pa · 101.3/801.3 = 294.9 Pa.
    expect(Math.abs(points.exhaustDewPoint - 273.15 + 8.7)).toBeLessThan(0.3);
  });
});

describe('air that is too dry to drop anything', () => {
  it('goes through with all its water', () => {
    const dry = moistureOf(shed(0.1), 1 / HOUR)!;
    expect(dry.condensed).toBe(0);
    expectWithin(dry.carriedOn, dry.takenIn, 0.02);
    expect(dry.pressureDewPoint).toBeLessThan(293.15);
  });
});

describe('where the air comes from', () => {
  it('cools under the pressure in front of the regulator when no compressor is described', () => {
    const held = moistureOf(shed(1, { compressor: undefined }), 1)!;
    expect(held.receiverPressure).toBe(401_325);
    expect(saturationPressure(held.roomDewPoint)).toBeCloseTo(saturationPressure(293.15), 6);
  });

  it('brings none from bottles, nor when it is perfectly dry', () => {
    expect(moistureOf(shed(0.6, { gas: 'nitrogen', compressor: undefined }), 1)).toBeUndefined();
    expect(moistureOf(shed(0), 1)).toBeUndefined();
  });
});
