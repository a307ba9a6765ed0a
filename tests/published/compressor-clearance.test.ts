/**
 * The clearance law of volumetric efficiency, η = 1 + c − c (p₂/p₁)^(1/n), against worked examples of textbooks whose
 * figures and answers were seen on the pages named.
 */
import { describe, expect, it } from 'vitest';
import { freeAirDelivery, volumetricEfficiency } from '../../src/parts/compressor.ts';
import { compressorWith } from '../support/compressors.ts';
import { expectWithin } from '../support/expect-within.ts';

describe('volumetric efficiency by the clearance law', () => {
  it('82.65 %: 5 % clearance, 100 to 650 kPa, n = 1.25 (seen)', () => {
    // Bhatt and Mehta, Elements of Mechanical Engineering, example 8.1, as worked on tbc-python.fossee.in.
    expectWithin(volumetricEfficiency(0.05, 6.5, 1.25), 0.8265, 1e-4);
  });

  it('200 × 300 mm at 500 a minute, 5 %, n = 1.3, 97 to 550 kPa: 3.814 m³/min of free air, 80.9 % (seen)', () => {
    // Chapter "Air and Gas Compressors", example 14.1, of a thermodynamics text whose title was not on the page seen (a
    // public collection of worked examples). Intake at 20 °C, free air at 101.325 kPa and 15 °C.
    const swept = (Math.PI / 4) * 0.2 ** 2 * 0.3 * 500;
    const toFreeAir = (97 / 101.325) * (288 / 293);
    const efficiency = volumetricEfficiency(0.05, 550 / 97, 1.3);
    expectWithin(efficiency * swept * toFreeAir, 3.814, 2e-4);
    expectWithin(efficiency * toFreeAir, 0.809, 1e-3);
  });
});

describe('free air delivery at another pressure than the one it is stated for', () => {
  const room = 100e3;
  const compressor = compressorWith({
    free_air_delivery: 1,
    stated_pressure: room,
    receiver_volume: 0.05,
    cut_in: 6e5,
    cut_out: 8e5,
    clearance: 0.05,
    expansion_exponent: 1.25,
  });

  it('of a displacement, stated at the pressure of the room, is the efficiency times that (seen: 82.65 %)', () => {
    expectWithin(freeAirDelivery(compressor, room)(650e3), 0.8265, 1e-4);
  });

  it('half-way between cut-in and cut-out is as stated, when no pressure was', () => {
    const delivery = freeAirDelivery({ ...compressor, stated_pressure: undefined }, room);
    expectWithin(delivery(7e5), 1, 1e-12);
    expect(delivery(6e5)).toBeGreaterThan(1);
    expect(delivery(8e5)).toBeLessThan(1);
  });

  it('does not change with pressure without clearance', () => {
    const delivery = freeAirDelivery({ ...compressor, clearance: 0 }, room);
    expect([delivery(1e5), delivery(6e5), delivery(20e5)]).toEqual([1, 1, 1]);
  });

  it('is nothing at all where the clearance takes back every stroke, (1 + 1/c)^n times the room', () => {
    const highest = room * (1 + 1 / 0.05) ** 1.25;
    const delivery = freeAirDelivery(compressor, room);
    expect(delivery(0.999 * highest)).toBeGreaterThan(0);
    expect(delivery(1.001 * highest)).toBe(0);
  });

  it('of two stages with ideal cooling between is that of about a fifth of the clearance (derived)', () => {
    // 5 % in a first stage that compresses to the root of the whole ratio; what counts is the fall from 7 to 9 bar.
    const falls = (efficiency: (ratio: number) => number) => 1 - efficiency(9) / efficiency(7);
    const twoStages = falls((ratio) => volumetricEfficiency(0.05, Math.sqrt(ratio), 1.3));
    const oneOfLess = falls((ratio) => volumetricEfficiency(0.01, ratio, 1.3));
    expectWithin(oneOfLess, twoStages, 0.2);
  });
});
