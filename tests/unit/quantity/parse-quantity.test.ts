import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../src/kinds/parameter.ts';
import { dimensions } from '../../../src/quantity/dimensions.ts';
import { formatQuantity } from '../../../src/quantity/format.ts';
import { parseQuantity } from '../../../src/quantity/parse-quantity.ts';

const names = Object.keys(dimensions) as Dimension[];

function valueOf(text: string, dimension: Dimension): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.reason}`);
  return parsed.value;
}

function refusalOf(text: string, dimension: Dimension) {
  const parsed = parseQuantity(text, dimension);
  if (parsed.ok) throw new Error(`${text} was read as ${String(parsed.value)}`);
  return parsed;
}

describe('a value with its unit', () => {
  it.each<[string, Dimension, number]>([
    ['50 mm', 'length', 0.05],
    ['30 µm', 'length', 3e-5],
    ['30 μm', 'length', 3e-5],
    ['30um', 'length', 3e-5],
    ['5 thou', 'length', 1.27e-4],
    ['-2.5e1 mm', 'length', -0.025],
    ['−.5 mm', 'length', -5e-4],
    ['2 mm2', 'area', 2e-6],
    ['2 mm²', 'area', 2e-6],
    ['20 cm3', 'volume', 2e-5],
    ['20 cm³', 'volume', 2e-5],
    ['7.85 kg/dm^3', 'density', 7850],
    ['20 °C', 'temperature', 293.15],
    ['20 degC', 'temperature', 293.15],
    ['300 K', 'temperature', 300],
    ['180°', 'angle', Math.PI],
    ['60 rpm', 'rotational speed', 2 * Math.PI],
    ['1 rev/s', 'rotational speed', 2 * Math.PI],
    ['60 L/min', 'volume flow', 1e-3],
    ['60 l/min', 'volume flow', 1e-3],
    ['1 cfm', 'volume flow', 0.3048 ** 3 / 60],
    ['1 N m', 'torque', 1],
    ['1 Nm', 'torque', 1],
    ['1 mNm', 'torque', 1e-3],
    ['1 mN m', 'torque', 1e-3],
    ['1 N·m', 'torque', 1],
    ['1 mN m s', 'torque per speed', 1e-3],
    ['1 N m/(rad/s)', 'torque per speed', 1],
    ['1 N m/rpm', 'torque per speed', 30 / Math.PI],
    ['1 N m s^2', 'torque per speed squared', 1],
    ['2 N/bar', 'force per pressure', 2e-5],
    ['1 kg m^2', 'moment of inertia', 1],
    ['1 dm^3/(s bar)', 'sonic conductance', 1e-8],
    ['1 mPa s', 'dynamic viscosity', 1e-3],
    ['100 W/(m^2 K)', 'heat transfer coefficient', 100],
  ])('%s', (text, dimension, value) => {
    expect(valueOf(text, dimension)).toBeCloseTo(value, 12);
    expect(valueOf(text, dimension) / value).toBeCloseTo(1, 12);
  });

  it('is the short decimal it was written as', () => {
    expect(valueOf('30 µm', 'length')).toBe(3e-5);
    expect(valueOf('1.5 dm³/(s·bar)', 'sonic conductance')).toBe(1.5e-8);
    expect(valueOf('180 deg', 'angle')).toBe(Math.PI);
  });

  it.each([
    ['50 kg', 'length', 'a mass', 'Write "16 mm".'],
    ['5 A', 'length', 'not a length', 'Write "16 mm".'],
    ['2', 'length', 'no unit', 'Write "2 mm".'],
    ['2 parsnips', 'length', 'unknown unit "parsnips"', 'Write "16 mm".'],
    ['2 constructor', 'length', 'unknown unit "constructor"', 'Write "16 mm".'],
    ['2 mm + 3 mm', 'length', 'unknown unit "mm + 3 mm"', 'Write "16 mm".'],
    ['wide', 'length', 'not a number', 'Write "16 mm".'],
    ['NaN mm', 'length', 'not a number', 'Write "16 mm".'],
    ['Infinity mm', 'length', 'not a number', 'Write "16 mm".'],
    ['1e400 mm', 'length', 'too large', 'Write "16 mm".'],
    ['1e308 km', 'length', 'too large', 'Write "16 mm".'],
    ['2i mm', 'length', 'unknown unit "i mm"', 'Write "16 mm".'],
    ['1,5 mm', 'length', 'a decimal comma', 'Write "1.5 mm".'],
    ['1,250 mm', 'length', 'a decimal comma', 'Write "1.250 mm" or "1250 mm".'],
    ['50 Hz', 'rotational speed', 'not a rotational speed', 'Write "400 rpm".'],
    [`${'1'.repeat(90)} mm`, 'length', 'too long', 'Write "16 mm".'],
  ] as const)('refuses %s', (text, dimension, reason, hint) => {
    expect(refusalOf(text, dimension)).toEqual({ ok: false, reason, hint });
  });

  it('borrows the unit of the hint from the example', () => {
    expect(parseQuantity('8', 'length', '30 µm')).toMatchObject({ hint: 'Write "8 µm".' });
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.constantFrom(...names), (text, dimension) => {
        const bare = parseQuantity(text, dimension);
        const numbered = parseQuantity(`5 ${text}`, dimension);
        const sound = [bare, numbered].map((parsed) =>
          parsed.ok ? Number.isFinite(parsed.value) : parsed.hint,
        );
        expect(sound.every(Boolean)).toBe(true);
      }),
    );
  });
});

describe('a pressure', () => {
  it.each([
    ['4 bar gauge', 4e5, 'gauge'],
    ['4 barg', 4e5, 'gauge'],
    ['4 bar g', 4e5, 'gauge'],
    ['4 bar(g)', 4e5, 'gauge'],
    ['1013 mbar absolute', 101_300, 'absolute'],
    ['1013 mbar abs', 101_300, 'absolute'],
    ['5 bara', 5e5, 'absolute'],
    ['5 bar(a)', 5e5, 'absolute'],
    ['60 psig', 413_685.4, 'gauge'],
    ['60 psi gauge', 413_685.4, 'gauge'],
    ['60 PSI gauge', 413_685.4, 'gauge'],
    ['14.5 psia', 99_974, 'absolute'],
    ['101 kPa absolute', 101_000, 'absolute'],
  ] as const)('%s', (text, value, reference) => {
    expect(valueOf(text, 'pressure')).toBeCloseTo(value, 0);
    expect(parseQuantity(text, 'pressure')).toMatchObject({ reference });
  });

  it.each(['4 bar', '60 psi', '400 kPa'])('refuses %s without its reference', (text) => {
    expect(refusalOf(text, 'pressure')).toEqual({
      ok: false,
      reason: 'neither gauge nor absolute',
      hint: `Write "${text} gauge" or "${text} absolute".`,
    });
  });

  it('is still told from other dimensions', () => {
    expect(refusalOf('4 mm gauge', 'pressure').reason).toBe('a length');
  });
});

describe('reading back', () => {
  it.each(names)('the example of %s', (dimension) => {
    expect(parseQuantity(dimensions[dimension].example, dimension).ok).toBe(true);
  });

  it.each(names)('what is shown for any %s', (dimension) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e6, noNaN: true }), (value) => {
        const back = valueOf(formatQuantity(value, dimension, { digits: 12 }), dimension);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(
          1e-9 * Math.max(value, dimension === 'temperature' ? 300 : 0),
        );
      }),
    );
  });
});
