/** Helical springs against worked examples (D. Kirk after Shigley, seen; strength-of-materials problems, seen). */
import { describe, expect, it } from 'vitest';
import {
  solidLength,
  springRate,
  springStress,
  wireStrength,
} from '../../src/workshop/springs/helical-spring.ts';
import { expectWithin } from '../support/expect-within.ts';

/** d 2.5 mm, D 22.25 mm, 16 working coils of 18, G 79.3 GPa, free 90 mm. Tolerances: the last printed digit. */
describe('a spring of 16 coils', () => {
  const spring = { wire: 2.5e-3, coilDiameter: 22.25e-3, activeCoils: 16 };

  it('2197 N/m', () => {
    expect(Math.abs(springRate(spring) - 2197)).toBeLessThan(0.5);
  });

  it('45.3 N and 173.5 MPa at 20.62 mm', () => {
    const force = springRate(spring) * 20.62e-3;
    expect(Math.abs(force - 45.3)).toBeLessThan(0.05);
    expect(Math.abs(springStress(spring, force) / 1e6 - 173.5)).toBeLessThan(0.1);
  });

  it('98.9 N and 378.6 MPa when solid', () => {
    expect(solidLength(spring)).toBeCloseTo(45e-3, 12);
    const force = springRate(spring) * (90e-3 - solidLength(spring));
    expect(Math.abs(force - 98.9)).toBeLessThan(0.05);
    expectWithin(springStress(spring, force), 378.6e6, 1e-3);
  });
});

/** 1 kN/m, 45 N, 126 MPa, 4.5 cm solid, G 42 GPa: wire 0.306 cm, coils 3.15 cm; there without the direct shear (seen). */
it('a spring designed for 126 MPa', () => {
  const spring = { wire: 3.06e-3, coilDiameter: 31.5e-3, activeCoils: 45 / 3.06 };
  expectWithin(springRate(spring, 42e9), 1e3, 0.01);
  const index = spring.coilDiameter / spring.wire;
  expectWithin(springStress(spring, 45) / (1 + 0.5 / index), 126e6, 0.01);
});

/** Outer of two nested springs: 10 coils, 3 cm, wire 3 mm, G 80 GPa, pressed 2 cm: 60 N (inputs seen, answer ours). */
it('an outer spring of 60 N', () => {
  expectWithin(springRate({ wire: 3e-3, coilDiameter: 30e-3, activeCoils: 10 }, 80e9) * 20e-3, 60, 1e-9);
});

/** Music wire of 7.25 mm: 1492 MPa (engineeringprep.com, problem 141; seen). */
it('the strength of music wire', () => {
  expect(Math.round(wireStrength(7.25e-3) / 1e6)).toBe(1492);
});
