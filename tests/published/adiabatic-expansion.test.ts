/**
 * A closed cylinder without wall heat drawn out by hand, from top to bottom dead centre: worked examples of reversible
 * adiabatic expansion. The clearance is chosen so that the stroke makes the pressure ratio wanted.
 */
import { describe, expect, it } from 'vitest';
import { engineStepper } from '../../src/run/stepper.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, fillCylinder, idealEngine } from '../support/ideal-engine.ts';

const GAMMA = 1.4;
const BOOK_GAS_CONSTANT = 287;
const OUR_GAS_CONSTANT = 287.05;

interface Expansion {
  readonly from: number;
  readonly to: number;
  readonly temperature: number;
}

interface Outcome {
  /** [J/kg]. */
  readonly work: number;
  readonly pressure: number;
  readonly temperature: number;
}

function expand({ from, to, temperature }: Expansion): Outcome {
  const clearance = 1 / ((from / to) ** (1 / GAMMA) - 1);
  const { system, y } = atStart(idealEngine({ cylinder: { clearance } }));
  fillCylinder(system, y, from, temperature);
  const arrival = engineStepper(system).inAngle(y, Math.PI, { stepLimit: 10_000 });
  expect(arrival.reason).toBe('end');
  const { slots, engine } = system;
  const [{ place }] = engine.ends;
  const now = system.observe(y);
  return {
    work: y[slots.gasWork]! / y[slots.mass(1)]!,
    pressure: now.pressure[place]!,
    temperature: now.temperature[place]!,
  };
}

describe('air expanding without heat', () => {
  it('0.75 kg from 800 K, 400 to 150 kPa: 105.21 kJ (seen), 604.48 K (derived)', () => {
    // "Compressible flow – fundamentals", example 1.1, with R = 0.287 kJ/(kg K): work goes with R, temperature not.
    const end = expand({ from: 400e3, to: 150e3, temperature: 800 });
    expectWithin(end.pressure, 150e3, 1e-6);
    expectWithin(0.75 * end.work * (BOOK_GAS_CONSTANT / OUR_GAS_CONSTANT), 105.21e3, 1e-4);
    expectWithin(end.temperature, 604.48, 1e-4);
  });

  // T₂ = T₁ (p₂/p₁)^((γ−1)/γ); printed to 0.1 K (derived).
  it.each([
    { name: '6 bar gauge to the room', ratio: 7.01325 / 1.01325, end: -104.5 },
    { name: 'pressure ratio 4', ratio: 4, end: -75.9 },
    { name: 'pressure ratio 2', ratio: 2, end: -32.7 },
  ])('$name from 20 °C: $end °C (derived)', ({ ratio, end }) => {
    const { temperature } = expand({ from: ratio * 101_325, to: 101_325, temperature: 293.15 });
    expect(Math.abs(temperature - 273.15 - end)).toBeLessThan(0.1);
  });
});
