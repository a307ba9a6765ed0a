import { describe, expect, it } from 'vitest';
import { parsePureNumber, withoutNoise } from '../../../src/quantity/number.ts';

describe('a pure number', () => {
  it.each([
    ['0.06', 0.06],
    ['6 %', 0.06],
    ['7%', 0.07],
    ['-2', -2],
    ['1e-3', 1e-3],
  ])('%s', (text, value) => {
    expect(parsePureNumber(text, '0.5')).toEqual({ ok: true, value });
  });

  it.each([
    ['0,06', 'a decimal comma', 'Write "0.06".'],
    ['6 mm', 'more than a plain number', 'Write "6" or "6 %".'],
    ['0x10', 'more than a plain number', 'Write "0" or "0 %".'],
    ['.nan', 'not a number', 'Write "0.5".'],
    ['1e999', 'too large', 'Write "0.5".'],
  ])('refuses %s', (text, reason, hint) => {
    expect(parsePureNumber(text, '0.5')).toEqual({ ok: false, reason, hint });
  });
});

describe('rounding off the last bits', () => {
  it('restores a short decimal', () => {
    expect(30 * 1e-6).not.toBe(3e-5);
    expect(withoutNoise(30 * 1e-6)).toBe(3e-5);
  });

  it.each([Math.PI, 1 / 3, 0.123456789012345, 0, -2.5])('leaves %d alone', (value) => {
    expect(withoutNoise(value)).toBe(value);
  });
});
