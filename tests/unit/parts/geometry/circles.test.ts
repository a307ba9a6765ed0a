/** Areas of partly covered circles: closed forms of geometry, and a sum of chords. */
import { describe, expect, it } from 'vitest';
import { segmentArea, sharedCircleArea } from '../../../../src/parts/geometry/circles.ts';

const a = 3;
const whole = Math.PI * a * a;

/** Chords of the circle of radius a about 0, those within the circle of radius b about `apart`, added up. */
function chordSum(b: number, apart: number): number {
  const n = 40_000;
  let area = 0;
  for (let i = 0; i < n; i += 1) {
    const x = -a + (2 * a * (i + 0.5)) / n;
    const half = Math.min(Math.sqrt(a * a - x * x), Math.sqrt(Math.max(0, b * b - (x - apart) ** 2)));
    area += (2 * half * 2 * a) / n;
  }
  return area;
}

describe('a segment', () => {
  it.each([
    { name: 'none', height: 0, area: 0 },
    { name: 'below the circle', height: -1, area: 0 },
    { name: 'a quarter of the height', height: a / 2, area: a * a * (Math.PI / 3 - Math.sqrt(3) / 4) },
    { name: 'half', height: a, area: whole / 2 },
    { name: 'three quarters', height: 1.5 * a, area: whole - a * a * (Math.PI / 3 - Math.sqrt(3) / 4) },
    { name: 'whole', height: 2 * a, area: whole },
    { name: 'past the circle', height: 7, area: whole },
  ])('$name', ({ height, area }) => {
    expect(segmentArea(a, height)).toBeCloseTo(area, 12);
  });

  it('a thin one goes as 4/3 √(2a) h^1.5', () => {
    const height = 1e-7;
    expect(segmentArea(a, height) / ((4 / 3) * Math.sqrt(2 * a) * height ** 1.5)).toBeCloseTo(1, 6);
  });
});

describe('two circles', () => {
  it('equal ones a radius apart share (2π/3 − √3/2) a²', () => {
    expect(sharedCircleArea(a, a, a)).toBeCloseTo(a * a * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2), 12);
  });

  it('share nothing side by side, and the smaller one inside the larger', () => {
    expect(sharedCircleArea(a, 2, 5)).toBe(0);
    expect(sharedCircleArea(a, 2, 6)).toBe(0);
    expect(sharedCircleArea(a, 2, 1)).toBeCloseTo(4 * Math.PI, 12);
    expect(sharedCircleArea(2, a, 0)).toBeCloseTo(4 * Math.PI, 12);
  });

  it.each([
    { b: 3, apart: 0.5 },
    { b: 3, apart: 4 },
    { b: 2, apart: 1.2 },
    { b: 2, apart: 3 },
    { b: 5, apart: 2.3 },
    { b: 5, apart: 4.5 },
    { b: 5, apart: 7.5 },
  ])('radii 3 and $b, $apart apart: the sum of their chords', ({ b, apart }) => {
    expect(Math.abs(sharedCircleArea(a, b, apart) - chordSum(b, apart))).toBeLessThan(1e-4);
    expect(sharedCircleArea(b, a, apart)).toBeCloseTo(sharedCircleArea(a, b, apart), 12);
  });
});
