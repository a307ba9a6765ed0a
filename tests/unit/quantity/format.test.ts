import { describe, expect, it } from 'vitest';
import { formatNumberRange, formatQuantity, formatRange } from '../../../src/quantity/format.ts';

describe('values for people', () => {
  it.each([
    [0.05, 'length', '50 mm'],
    [3e-5, 'length', '30 µm'],
    [1e-4, 'length', '0.1 mm'],
    [2.5, 'length', '2.5 m'],
    [-0.003, 'length', '-3 mm'],
    [293.15, 'temperature', '20 °C'],
    [Math.PI, 'angle', '180°'],
    [10 * Math.PI, 'rotational speed', '300 rpm'],
    [101_325, 'pressure', '1.013 bar absolute'],
    [0.02, 'torque', '20 mN·m'],
    [1 / 3, 'length', '333.3 mm'],
  ] as const)('%d as %s', (value, dimension, text) => {
    expect(formatQuantity(value, dimension)).toBe(text);
  });

  it('shows gauge pressure against its atmosphere', () => {
    expect(formatQuantity(501_300, 'pressure', { atmosphere: 101_300 })).toBe('4.00 bar gauge');
  });
});

describe('ranges for people', () => {
  it.each([
    [0, 0.01, 'length', 'from 0 mm to 10 mm'],
    [1e-6, 2e-3, 'length', 'from 1 µm to 2 mm'],
    [-0.003, 0.003, 'length', 'from -3 mm to 3 mm'],
    [50e3, 120e3, 'pressure', 'from 0.5 bar absolute to 1.2 bar absolute'],
    [0.001, Infinity, 'length', 'of at least 1 mm'],
    [-Infinity, 0.001, 'length', 'of at most 1 mm'],
    [-Infinity, Infinity, 'length', 'of any size'],
  ] as const)('%d to %d', (min, max, dimension, text) => {
    expect(formatRange(min, max, dimension)).toBe(text);
  });

  it('of pure numbers', () => {
    expect(formatNumberRange(0.001, 2)).toBe('from 0.001 to 2');
  });
});
