/**
 * Laminar leakage through narrow gaps. A section without end takes the entrance loss out of the gap law and leaves the
 * laminar part, which is what the sources know.
 */
import { describe, expect, it } from 'vitest';
import {
  annulusResistance,
  eccentricityFactor,
  filmResistance,
  gapFlow,
  radialShapeFactor,
  slitResistance,
} from '../../src/gas/gap.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { expectWithin } from '../support/expect-within.ts';

const NO_LOSS = 1e3;
const ROOM = 101_325;

/** Volume flow [m³/s] of a liquid: the laminar law of a gap with the density left constant. */
const liquidFlow = (drop: number, viscosity: number, resistance: number): number =>
  drop / (12 * viscosity * resistance);

describe('liquid through a narrow gap', () => {
  it('ring gap D 25 mm, 5 µm, 15 mm long, 19 MPa, 0.018 Pa s: 57.6 mm³/s (from memory)', () => {
    // Fox and McDonald, Introduction to Fluid Mechanics, example 8.1; three figures.
    const resistance = annulusResistance(0.025, 5e-6, 0.015, 0);
    expectWithin(liquidFlow(19e6, 0.018, resistance) * 1e9, 57.6, 0.002);
  });

  it('slit of 50 × 1 × 150 mm, 2 bar, 0.08 Pa s: 6.94e-5 m³/s (inputs seen)', () => {
    // I. Bittle, Fluids, chapter 16, worked examples.
    const resistance = slitResistance(0.15, 0.05, 0.001);
    expectWithin(liquidFlow(2e5, 0.08, resistance), 6.94e-5, 1e-3);
  });
});

describe('shape of the gap', () => {
  it('twice the clearance leaks eight times as much (seen)', () => {
    // Rabie, Fluid Power Engineering (2009), equation 2.19.
    expectWithin(
      annulusResistance(0.01, 5e-6, 0.005, 1) / annulusResistance(0.01, 10e-6, 0.005, 1),
      8,
      1e-12,
    );
  });

  it.each([
    [0.5, 1.375],
    [1, 2.5],
  ])('eccentricity %s leaks %s times as much (seen)', (eccentricity, factor) => {
    // Rabie, equation 2.24; the full factor also in makers' fluid lexicons under "circular sealing gap".
    expect(eccentricityFactor(eccentricity)).toBe(factor);
    // And as the mean of h³ round the gap h = c (1 + ε cos φ).
    const n = 360;
    const cubes = Array.from(
      { length: n },
      (_, i) => (1 + eccentricity * Math.cos((2 * Math.PI * i) / n)) ** 3,
    );
    const mean = cubes.reduce((a, b) => a + b, 0) / n;
    expectWithin(annulusResistance(1, 1, 1, 0) / annulusResistance(1, 1, 1, eccentricity), mean, 1e-12);
  });

  // Nozzle-to-plate formula with the mean diameter, Q = π(d₁+d₂)h³Δp/(12(d₁−d₂)μ) (seen, Rabie p. 23): it exceeds the
  // logarithmic law by these shares (derived).
  it.each([
    [1.11, 0.0009],
    [1.25, 0.004],
    [2, 0.04],
    [5, 0.21],
  ])('radial gap, radii 1 : %s: mean diameter is %s too high', (ratio, excess) => {
    const meanDiameter = (Math.PI * (ratio + 1)) / (ratio - 1);
    expect(Math.abs(meanDiameter / radialShapeFactor(1, ratio) - 1 - excess)).toBeLessThan(0.06 * excess);
  });

  it('a film between faces leaks like a slit of equal width to length', () => {
    expectWithin(filmResistance(4, 1e-5), slitResistance(0.5, 2, 1e-5), 1e-12);
  });
});

describe('gas through a narrow gap', () => {
  const resistance = annulusResistance(0.01, 5e-6, 0.005, 0);

  it('goes with the difference of the squared pressures: 10 to 20 atm upstream makes 0.001 into 0.004 (seen)', () => {
    // leakdetection-technology.com, "laminar flow". One figure printed, exactly 4.03.
    const leak = (atmospheres: number): number =>
      gapFlow(dryAir, resistance, NO_LOSS, atmospheres * ROOM, 293.15, ROOM);
    expectWithin((0.001 * leak(20)) / leak(10), 0.004, 0.015);
    expectWithin(leak(20) / leak(10), 399 / 99, 1e-12);
  });

  // Spool of 10 mm with 5 mm land, 6 bar gauge to the room, 20 °C, μ = 1.813e-5 (derived). The Reynolds number 2ṁ/(πDμ)
  // grows from 36 over 290 to 2322, and the share x that entrance and exit leave of the laminar flow falls: the root of
  // α x² + x = 1 with α = 0.00113, 0.0181, 0.290, the loss at laminar flow over the drive p₁² − p₂².
  it.each([
    { clearance_um: 5, laminar: 1.033e-5, share: 0.9989 },
    { clearance_um: 10, laminar: 8.264e-5, share: 0.9825 },
    { clearance_um: 20, laminar: 6.61e-4, share: 0.81 },
  ])('spool with $clearance_um µm: $laminar kg/s laminar, $share of it (derived)', (spool) => {
    const clearance = spool.clearance_um * 1e-6;
    const own = annulusResistance(0.01, clearance, 0.005, 0);
    const flow = (section: number): number => gapFlow(dryAir, own, section, 6e5 + ROOM, 293.15, ROOM);
    expectWithin(flow(NO_LOSS), spool.laminar, 1e-3);
    expectWithin(flow(Math.PI * 0.01 * clearance) / flow(NO_LOSS), spool.share, 5e-4);
  });
});
