/**
 * An oiled disc between its plates: a tight gap drags, a wide one leaks, and somewhere between the engine runs fastest.
 * Thinner oil asks for a finer gap, and so does a disc geared down, which drags less.
 */
import { describe, expect, it } from 'vitest';
import { settledSpeed, systemOf } from '../support/drive.ts';
import { DEGREE, discGear, growingLoad, referenceSpec } from '../support/reference-engine.ts';

const gaps = [14, 20, 28, 40, 56, 80, 112].map((microns) => microns * 1e-6);

interface Disc {
  /** Viscosity of the oil [Pa s]. */
  readonly filmViscosity: number;
  readonly slots?: number;
}

/** Settled speed [rad/s] of the engine, pushed on its way. */
function speedWith(disc: Disc, faceGap: number): number {
  const spec = referenceSpec({ valve_gear: discGear({ ...disc, faceGap }), load: growingLoad(0.4, 0.003) });
  return settledSpeed(systemOf(spec), { angle: 40 * DEGREE, speed: 20, longestTime: 120 });
}

const oil = { filmViscosity: 0.03 };

describe('the gap of an oiled disc', () => {
  const oiled = gaps.map((gap) => speedWith(oil, gap));
  const best = oiled.indexOf(Math.max(...oiled));
  const finer = gaps[best - 1]!;

  it('has an optimum inside the range, not at an end', () => {
    expect(best).toBeGreaterThan(0);
    expect(best).toBeLessThan(gaps.length - 1);
    expect(oiled[best]).toBeGreaterThan(1.03 * oiled[0]!);
    expect(oiled[best]).toBeGreaterThan(1.03 * oiled.at(-1)!);
  });

  it('is one hump: faster up to the optimum, slower beyond', () => {
    const steps = oiled.slice(1).map((speed, i) => Math.sign(speed - oiled[i]!));
    expect(steps).toEqual(steps.map((_, i) => (i < best ? 1 : -1)));
  });

  it.each([
    ['no oil at all', { filmViscosity: 0 }],
    ['thinner oil', { filmViscosity: 0.005 }],
    ['the disc geared down', { ...oil, slots: 3 }],
  ])('wants to be finer with %s', (_change, disc) => {
    expect(speedWith(disc, finer)).toBeGreaterThan(speedWith(disc, gaps[best]!));
    expect(oiled[best]).toBeGreaterThan(oiled[best - 1]!);
  });
});
