/** The engine's demand against the compressor, by hand. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { compressorVerdict } from '../../../src/run/compressor-verdict.ts';
import { steadyCompressor } from '../../support/compressors.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const compressor = steadyCompressor({
  free_air_delivery: 2e-3,
  receiver_volume: 0.05,
  cut_in: 7e5,
  cut_out: 9e5,
  duty_rating: 0.6,
});
const spec = referenceSpec({ supply: { pressure: 4e5 } });
const { pressure, temperature } = spec.atmosphere;
const roomDensity = pressure / (dryAir.specificGasConstant * temperature);
const delivery = 2e-3 * roomDensity;

describe('a compressor', () => {
  it('that delivers twice the demand runs half the time', () => {
    const verdict = compressorVerdict(compressor, spec, delivery / 2);
    expect(verdict).toMatchObject({ keepsUp: true, dutyRating: 0.6 });
    expect(verdict.duty).toBeCloseTo(0.5, 12);
    expect(verdict.minutesUntilSag).toBeUndefined();
    expect(verdict.deliveryAnr / verdict.demandAnr).toBeCloseTo(2, 12);
  });

  it('that just keeps up never sags', () => {
    const verdict = compressorVerdict(compressor, spec, delivery);
    expect(verdict.keepsUp).toBe(true);
    expect(verdict.duty).toBe(1);
  });

  it('whose delivery falls below the demand on the way up keeps up without a rest', () => {
    const falling = { ...compressor, clearance: 0.05 };
    const verdict = compressorVerdict(falling, spec, 1.02 * delivery);
    expect(verdict).toMatchObject({ keepsUp: true, duty: 1 });
    expect(verdict.minutesUntilSag).toBeUndefined();
    expect(verdict.deliveryAnr).toBeLessThan(verdict.demandAnr);
  });

  it('that delivers half the demand lets the receiver fall', () => {
    const verdict = compressorVerdict(compressor, spec, 2 * delivery);
    const massPerPascal = 0.05 / (dryAir.specificGasConstant * temperature);
    // 2 bar with the compressor off, then 3 bar with half of the demand made good.
    const seconds = massPerPascal * (2e5 / (2 * delivery) + 3e5 / delivery);
    expect(verdict.keepsUp).toBe(false);
    expect(verdict.duty).toBe(1);
    expect(verdict.minutesUntilSag).toBeCloseTo(seconds / 60, 9);
  });
});
