/** A spool at its limits: shut, wide open, infinitely fine, infinitely wide. Limits are derived. */
import { describe, expect, it } from 'vitest';
import {
  endResistance,
  mouthArea,
  mouthLifts,
  mouthRim,
  roundShapeFactor,
  shutResistance,
  spoolArea,
  type Spool,
} from '../../../src/parts/valve-gears/spool.ts';

const spool: Spool = {
  boreDiameter: 12e-3,
  waistDiameter: 6e-3,
  waistLength: 8e-3,
  holeDiameter: 6e-3,
  radialClearance: 8e-6,
  eccentricity: 0,
  lap: 1e-3,
  endLand: 8e-3,
};
const wholeHole = (Math.PI * spool.holeDiameter ** 2) / 4;

describe('the mouth', () => {
  it('is shut up to the lap', () => {
    expect(mouthArea(spool, 0)).toBe(0);
    expect(mouthArea(spool, spool.lap)).toBe(0);
    expect(mouthArea(spool, spool.lap + 1e-6)).toBeGreaterThan(0);
  });

  it('is half open with the edge at the middle of the hole', () => {
    expect(mouthArea(spool, spool.lap + spool.holeDiameter / 2) / wholeHole).toBeCloseTo(0.5, 12);
  });

  it('is the whole hole once the edge has passed it, until the waist ends', () => {
    const [, widest, shutting, past] = mouthLifts(spool) as [number, number, number, number];
    expect(mouthArea(spool, widest) / wholeHole).toBeCloseTo(1, 12);
    expect(mouthArea(spool, shutting) / wholeHole).toBeCloseTo(1, 8);
    expect(mouthArea(spool, shutting + 1e-4)).toBeLessThan(0.999 * wholeHole);
    expect(mouthArea(spool, past - 1e-6)).toBeGreaterThan(0);
    expect(mouthArea(spool, past) / wholeHole).toBeCloseTo(0, 8);
  });

  it('opens and shuts alike', () => {
    for (const passed of [0.5e-3, 2e-3, 5e-3]) {
      const opening = mouthArea(spool, spool.lap + passed);
      const shutting = mouthArea(spool, spool.lap + spool.waistLength + spool.holeDiameter - passed);
      expect(opening / shutting).toBeCloseTo(1, 9);
    }
  });
});

describe('the way through', () => {
  const full = spool.lap + spool.holeDiameter;

  it('is nothing when shut', () => {
    expect(spoolArea(spool, 0.65, 0)).toBe(0);
  });

  it('is two mouths in series when the waist is ever so thin and long', () => {
    const roomy = { ...spool, waistDiameter: 0, waistLength: 1e3 };
    expect(spoolArea(roomy, 0.65, full)).toBeCloseTo((0.65 * wholeHole) / Math.SQRT2, 12);
  });

  it('is the channels round the waist when these are ever so narrow', () => {
    const narrow = { ...spool, waistDiameter: spool.boreDiameter - 1e-6 };
    expect(spoolArea(narrow, 0.65, full) / (0.65 * 1e-6 * spool.waistLength)).toBeCloseTo(1, 6);
  });

  it('goes with the discharge coefficient', () => {
    expect(spoolArea(spool, 0.8, full) / spoolArea(spool, 0.4, full)).toBeCloseTo(2, 12);
  });
});

describe('the leak round the land', () => {
  it('of a small hole is that between two point-like mouths', () => {
    const fine = { ...spool, holeDiameter: spool.boreDiameter * 1e-4 };
    expect(roundShapeFactor(fine)).toBeCloseTo(Math.PI / Math.log(2e4), 6);
  });

  it('grows with the hole', () => {
    const wide = { ...spool, holeDiameter: 0.9 * spool.boreDiameter };
    expect(roundShapeFactor(wide)).toBeGreaterThan(roundShapeFactor(spool));
  });
});

describe('the leak along the land', () => {
  /** Width over length of the strip that the end land is worth. */
  const alongShapeFactor = (own: Spool, endLand: number): number =>
    1 / (endResistance({ ...own, endLand }) * own.radialClearance ** 3);
  const circumference = Math.PI * spool.boreDiameter;

  it('past a long land is that of a strip as wide as the circumference', () => {
    const one = 1 / alongShapeFactor(spool, 0.07);
    const two = 1 / alongShapeFactor(spool, 0.1);
    expect((two - one) * circumference).toBeCloseTo(0.03, 7);
  });

  it('from a hole in a wide plate is that of a circle beside a line', () => {
    const wide = { ...spool, boreDiameter: 100 };
    const a = spool.holeDiameter / 2;
    expect(alongShapeFactor(wide, 2e-3)).toBeCloseTo((2 * Math.PI) / Math.acosh((a + 2e-3) / a), 6);
  });

  it('falls as the land grows', () => {
    const factors = [1e-5, 1e-4, 1e-3, 1e-2].map((land) => alongShapeFactor(spool, land));
    expect(factors).toEqual(factors.toSorted((a, b) => b - a));
    expect(factors.every(Number.isFinite)).toBe(true);
  });
});

describe('the resistance of the shut spool', () => {
  it('goes with the inverse cube of the clearance when the land is long', () => {
    const tight = { ...spool, radialClearance: 4e-6 };
    expect(endResistance(tight) / endResistance(spool)).toBeCloseTo(8, 9);
  });

  it('is least, and finite, when the land is used up', () => {
    const lifts = [0, 0.5e-3, 0.9e-3, spool.lap, 5e-3];
    const resistances = lifts.map(shutResistance(spool));
    expect(resistances).toEqual(resistances.toSorted((a, b) => b - a));
    expect(resistances.at(-1)).toBe(resistances.at(-2));
    expect(Number.isFinite(resistances.at(-1))).toBe(true);
  });

  it('falls to two fifths at the end when the spool lies on the wall', () => {
    const lying = { ...spool, eccentricity: 1 };
    expect(endResistance(spool) / endResistance(lying)).toBeCloseTo(2.5, 12);
  });

  it('of an end without land is that of a land as long as the clearance is high', () => {
    const bare = endResistance({ ...spool, endLand: 0 });
    expect(bare).toBe(endResistance({ ...spool, endLand: spool.radialClearance }));
    expect(Number.isFinite(bare)).toBe(true);
  });

  it('lets the air through a rim of hole and clearance', () => {
    expect(mouthRim(spool)).toBeCloseTo(Math.PI * 6e-3 * 8e-6, 15);
  });
});
