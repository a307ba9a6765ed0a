/**
 * The tube relation C = 0.029 d²/√(L/d^1.25 + 510), b = 474 C/d² (Beater, Pneumatic Drives; from memory), against its own
 * figures and against an independent reckoning: adiabatic pipe flow with wall friction, choked at the open end.
 */
import { describe, expect, it } from 'vitest';
import { tubeConductance } from '../../src/gas/conductance.ts';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { expectWithin } from '../support/expect-within.ts';

const { specificGasConstant: R, heatCapacityRatio: gamma } = dryAir;
const STAGNATION_TEMPERATURE = 293.15;
const STAGNATION_PRESSURE = 7e5;
const INLET_LOSS = 0.5;

/** Friction length f L/d of a pipe that chokes at its end, from its inlet Mach number (any gas-dynamics text). */
function frictionLengthToChoke(mach: number): number {
  const m2 = mach * mach;
  const logarithm = Math.log(((gamma + 1) * m2) / (2 + (gamma - 1) * m2));
  return (1 - m2) / (gamma * m2) + ((gamma + 1) / (2 * gamma)) * logarithm;
}

/** Mass flow per area with that Mach number at the inlet, behind a sharp-edged mouth that costs half a velocity head. */
function inletFlow(mach: number): { readonly flux: number; readonly temperature: number } {
  const warmth = 1 + ((gamma - 1) / 2) * mach * mach;
  const recovery = warmth ** (gamma / (gamma - 1));
  const pressure = STAGNATION_PRESSURE / (recovery + (INLET_LOSS * gamma * mach * mach) / 2);
  const temperature = STAGNATION_TEMPERATURE / warmth;
  return { flux: pressure * mach * Math.sqrt(gamma / (R * temperature)), temperature };
}

/** Darcy friction factor of a smooth pipe (Haaland). */
const frictionFactor = (reynolds: number): number => (-1.8 * Math.log10(6.9 / reynolds)) ** -2;

/** C [m³/(s Pa)] of a smooth tube: the inlet Mach number that just chokes it, by bisection. */
function chokedConductance(bore: number, length: number): number {
  let [low, high] = [1e-3, 0.999];
  for (let i = 0; i < 60; i += 1) {
    const mach = (low + high) / 2;
    const { flux, temperature } = inletFlow(mach);
    const reynolds = (flux * bore) / dryAir.viscosity(temperature);
    const tooSlow = frictionLengthToChoke(mach) > (frictionFactor(reynolds) * length) / bore;
    if (tooSlow) low = mach;
    else high = mach;
  }
  return (inletFlow(low).flux * (Math.PI / 4) * bore ** 2) / (STAGNATION_PRESSURE * 1.185);
}

describe.each([
  { length: 1, bore_mm: 4, c: 1.196, b: 0.354, friction: 1.306 },
  { length: 2, bore_mm: 6, c: 2.526, b: 0.333, friction: 2.754 },
  { length: 0.5, bore_mm: 2.5, c: 0.484, b: 0.367, friction: 0.53 },
])('$length m of $bore_mm mm tube', ({ length, bore_mm, c, b, friction }) => {
  const bore = bore_mm * 1e-3;
  const tube = tubeConductance(bore, length);

  it(`has C = ${c} dm³/(s bar), b = ${b} (from memory)`, () => {
    expect(tube.sonicConductance * 1e8).toBeCloseTo(c, 3);
    expect(tube.criticalPressureRatio).toBeCloseTo(b, 3);
  });

  it(`lies 8–9 % below pipe friction, ${friction} dm³/(s bar) (derived)`, () => {
    const byFriction = chokedConductance(bore, length);
    expectWithin(byFriction * 1e8, friction, 0.005);
    // The relation was fitted to real tubes with rough ends; 12 % is what its authors and the smooth pipe may differ by.
    expectWithin(tube.sonicConductance, byFriction, 0.12);
  });
});
