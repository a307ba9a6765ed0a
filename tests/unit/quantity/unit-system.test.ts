/** Imperial display. Factors: table 1.2 of a handbook of acoustics (issuhub.com/view/index/4884) and a metric conversion
 * chart (thefreelibrary.com, a0153912187), both seen; the foot-pound from table 1.1 of the former. */
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../src/kinds/parameter.ts';
import { dimensions } from '../../../src/quantity/dimensions.ts';
import { columnUnit, formatQuantity, formatRange } from '../../../src/quantity/format.ts';
import { parseQuantity } from '../../../src/quantity/parse-quantity.ts';
import { inUnits, unitSystem } from '../../../src/quantity/unit-system.ts';
import { expectWithin } from '../../support/expect-within.ts';

const sizeOf = (dimension: Dimension, label: string): number =>
  dimensions[dimension].imperial?.find((unit) => unit.label === label)?.size ?? NaN;

describe('sizes of the units', () => {
  it.each([
    ['pressure', 'psi', 6894.757, 1e-7],
    ['force', 'lbf', 4.448222, 1e-6],
    ['length', 'in', 0.0254, 1e-12],
    ['length', 'thou', 2.54e-5, 1e-12],
    ['area', 'in²', 645.16e-6, 1e-12],
    ['volume', 'in³', 16.3871e-6, 1e-5],
    ['volume', 'ft³', 2.831685e-2, 1e-6],
    ['volume flow', 'cfm', 2.831685e-2 / 60, 1e-6],
    ['mass', 'oz', 28.3495e-3, 1e-5],
    ['mass', 'lb', 0.4535924, 1e-6],
    ['density', 'lb/ft³', 16.0185, 1e-5],
    ['torque', 'lbf·ft', 1.356, 2e-4],
  ] as const)('%s in %s', (dimension, label, size, tolerance) => {
    expectWithin(sizeOf(dimension, label), size, tolerance);
  });

  it('of a temperature: water freezes at 32 °F and boils at 212 °F', () => {
    const shown = (kelvin: number): string =>
      inUnits('imperial', () => formatQuantity(kelvin, 'temperature'));
    expect([shown(273.15), shown(373.15)]).toEqual(['32 °F', '212 °F']);
  });
});

describe('texts in imperial units', () => {
  const names = Object.keys(dimensions) as Dimension[];

  it.each(names)('a value of %s can be read back', (dimension) => {
    for (const value of [3.7e-7, 1.3e-3, 0.41, 290, 5.2e5]) {
      const text = inUnits('imperial', () => formatQuantity(value, dimension, { digits: 12 }));
      const read = parseQuantity(text, dimension);
      expect(read.ok ? read.value : text).toBeCloseTo(value, 9 - Math.max(0, Math.log10(value)));
    }
  });

  it.each([
    [0.05, 'length', '1.969 in'],
    [3e-5, 'length', '1.181 thou'],
    [5, 'length', '16.4 ft'],
    [4e-5, 'volume', '2.441 in³'],
    [2, 'torque', '1.475 lbf·ft'],
    [0.05, 'volume', '1.766 ft³'],
    [300, 'heat transfer coefficient', '300 W/(m²·K)'],
  ] as const)('%d as %s', (value, dimension, text) => {
    expect(inUnits('imperial', () => formatQuantity(value, dimension))).toBe(text);
  });

  it('of gauge pressure and of a range', () => {
    inUnits('imperial', () => {
      expect(formatQuantity(501_325, 'pressure', { atmosphere: 101_325 })).toBe('58.0 psi gauge');
      expect(formatRange(2e-3, 0.5, 'length')).toBe('from 0.07874 in to 19.69 in');
    });
  });
});

describe('the system in force', () => {
  it('is metric, imperial inside, and metric again, also after a failure', () => {
    expect(unitSystem()).toBe('metric');
    expect(inUnits('imperial', () => inUnits('metric', unitSystem) + unitSystem())).toBe('metricimperial');
    expect(() =>
      inUnits('imperial', () => {
        throw new Error('on purpose');
      }),
    ).toThrow('on purpose');
    expect(unitSystem()).toBe('metric');
  });

  it('decides the unit of columns and axes', () => {
    const torque = (): string =>
      `${columnUnit('torque').of(1.355_818).toFixed(3)} ${columnUnit('torque').label}`;
    expect([torque(), inUnits('imperial', torque)]).toEqual(['1.356 N·m', '1.000 lbf·ft']);
  });
});
