/** The mouth that a spool's waist uncovers, a circle cut by straight edges: closed forms and a numerical integral. */
import { describe, expect, it } from 'vitest';
import { mouthArea, spoolArea, type Spool } from '../../src/parts/valve-gears/spool.ts';
import { expectWithin } from '../support/expect-within.ts';

const a = 3;
const whole = Math.PI * a * a;

/** Millimetres: 6 mm hole, 1 mm lap. */
const spool: Spool = {
  boreDiameter: 12,
  waistDiameter: 6,
  waistLength: 8,
  holeDiameter: 2 * a,
  radialClearance: 0.006,
  eccentricity: 1,
  lap: 1,
  endLand: 10,
};

/** Chord length integrated over the part of the hole between two straight cuts; midpoint rule in the angle of the chord. */
function cutCircle(from: number, to: number): number {
  const angleAt = (z: number): number => Math.asin(Math.min(1, Math.max(-1, z / a)));
  const [low, high] = [angleAt(from), angleAt(to)];
  const n = 2000;
  const h = (high - low) / n;
  let area = 0;
  for (let i = 0; i < n; i += 1) area += 2 * a * a * Math.cos(low + (i + 0.5) * h) ** 2 * h;
  return area;
}

describe('one mouth', () => {
  it.each([
    { name: 'shut', lift: 0, area: 0 },
    { name: 'about to open', lift: 1, area: 0 },
    { name: 'a quarter of its height', lift: 1 + a / 2, area: a * a * (Math.PI / 3 - Math.sqrt(3) / 4) },
    { name: 'half', lift: 1 + a, area: whole / 2 },
    { name: 'three quarters', lift: 1 + 1.5 * a, area: whole - a * a * (Math.PI / 3 - Math.sqrt(3) / 4) },
    { name: 'open', lift: 1 + 2 * a, area: whole },
    { name: 'open, with the waist still about it', lift: 9, area: whole },
    { name: 'half shut by the other edge', lift: 1 + a + 8, area: whole / 2 },
    { name: 'passed by', lift: 16, area: 0 },
  ])('$name', ({ lift, area }) => {
    expect(mouthArea(spool, lift)).toBeCloseTo(area, 12);
  });

  it.each([8, 4, 1.5])('with a waist of %s mm: the integral of its chords at any lift', (waistLength) => {
    for (let lift = 0.3; lift < 16; lift += 0.7) {
      const leading = lift - a - spool.lap;
      const expected = cutCircle(leading - waistLength, leading);
      expect(Math.abs(mouthArea({ ...spool, waistLength }, lift) - expected)).toBeLessThan(1e-5);
    }
  });
});

describe('the whole way through', () => {
  it('two mouths and the way round the waist one behind the other', () => {
    const around = (12 - 6) * 8;
    const expected = 0.65 / Math.sqrt(2 / whole ** 2 + 1 / around ** 2);
    expectWithin(spoolArea(spool, 0.65, 7), expected, 1e-12);
  });
});
