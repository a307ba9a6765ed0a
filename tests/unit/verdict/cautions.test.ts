import { expect, test } from 'vitest';
import { hoopStress, rimSpeed } from '../../../src/verdict/cautions/flywheel.ts';
import { storedEnergy } from '../../../src/verdict/cautions/stored-energy.ts';
import { verdictOf } from '../../../src/verdict/verdict.ts';
import type { RunResult } from '../../../src/run/result.ts';
import * as results from '../report/synthetic-result.ts';

const { settledResult } = results;

function topic(result: RunResult, name: string) {
  return verdictOf(result).cautions.find((caution) => caution.topic === name);
}

test.each(Object.entries(results))(
  '%s comes with its cautions, each leaving the last word to others',
  (_name, result) => {
    const { cautions } = verdictOf(result);
    expect(cautions.map((caution) => caution.topic)).toEqual(
      expect.arrayContaining(['Stored energy', 'Pressure parts', 'Flywheel', 'Eyes, ears and hands']),
    );
    for (const { text } of cautions) expect(text).toMatch(/[Ll]ocal (code|rules)|rules at your place/u);
  },
);

test('stored energy is (p − p₀)·V/(γ − 1): 50 L at 8 bar gauge is 100 kJ (derived)', () => {
  expect(storedEnergy(9e5, 1e5, 0.05, 1.4)).toBeCloseTo(100e3, 6);
  expect(storedEnergy(9e5, 1e5, 0.05, 5 / 3)).toBeCloseTo(60e3, 6);
  expect(topic(settledResult, 'Stored energy')?.text).toContain(
    'holds up to 100 kJ, as much as lifts 100 kg by 102 m',
  );
});

test.each([
  [0.05, 'danger'],
  [0.002, 'caution'],
])('a receiver of %s m³ is a matter of %s', (volume, severity) => {
  const receiver = { volume, pressure: 9e5 };
  expect(
    topic({ ...settledResult, engine: { ...settledResult.engine, receiver } }, 'Stored energy')?.severity,
  ).toBe(severity);
});

test('a rim at 30 m/s of cast iron carries 6.5 MPa (derived: 7200 kg/m³ × 30² m²/s²)', () => {
  expect(rimSpeed(100, 0.3)).toBeCloseTo(30, 12);
  expect(hoopStress(7200, 30)).toBeCloseTo(6.48e6, 3);
});

test.each([
  [0.2, 'note'],
  [0.6, 'caution'],
  [1, 'danger'],
])('a rim of %s m radius at 315 rpm is a matter of %s', (radius, severity) => {
  const engine = { ...settledResult.engine, flywheelRim: { radius, density: 7200 } };
  expect(topic({ ...settledResult, engine }, 'Flywheel')?.severity).toBe(severity);
});

test('a rim of 0.11 m is said to reach 30 m/s at 2604 rpm, and no runaway speed is invented (derived: v/r)', () => {
  const text = topic(settledResult, 'Flywheel')?.text;
  expect(text).toContain('which this rim reaches at 2604 rpm');
  expect(text).toContain('runs away, and how fast was not reckoned');
});

test('a thin ring of 30 kg/m over 60 mm² carries 15 MPa at 5.48 m/s (worked answer ω = 5.48/r, seen)', () => {
  const density = 30 / (20e-3 * 3e-3);
  expect(hoopStress(density, 5.48) / 15e6).toBeCloseTo(1, 2);
});

test('Brode never says less than a release without heat from the walls (derived)', () => {
  for (const gamma of [1.4, 5 / 3])
    for (const ratio of [1.1, 2, 5, 10, 50, 200]) {
      const released = (ratio / (gamma - 1)) * (1 - ratio ** ((1 - gamma) / gamma));
      expect(storedEnergy(ratio, 1, 1, gamma)).toBeGreaterThan(released);
    }
});

test('a flywheel of unknown size is answered with the size that would be too large', () => {
  const { flywheelRim: _rim, ...engine } = settledResult.engine;
  expect(topic({ ...settledResult, engine }, 'Flywheel')?.text).toContain(
    'at 315 rpm that is a wheel of 1.82 m diameter',
  );
});
