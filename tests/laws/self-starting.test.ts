/** An engine with two double-acting cylinders, cranks at 90°, has no dead position; with one of them it has. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../src/model/engine.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { torqueBalance } from '../../src/run/torque-balance.ts';
import { readScenario } from '../../src/scenario/read-scenario.ts';
import { atStart } from '../support/ideal-engine.ts';
import { DEGREE } from '../support/reference-engine.ts';

function winch(): EngineSpec {
  const text = readFileSync(new URL('../../scenarios/hay-winch-twin.yaml', import.meta.url), 'utf8');
  const reading = readScenario(text, 'hay-winch-twin.yaml');
  if (!reading.ok) throw new Error('the scenario of the winch is not valid');
  return reading.spec;
}

const twin = winch();
const from = (spec: EngineSpec, degrees: number): EngineSpec => ({
  ...spec,
  start: { crank_angle: degrees * DEGREE, hand_speed: 0 },
  run: { longest_time: 1.5 },
});
const turnsFrom = (spec: EngineSpec, degrees: number): number => runEngine(from(spec, degrees)).outcome.turns;

describe('the hay winch', () => {
  it.each(Array.from({ length: 16 }, (_, i) => 22.5 * i))('starts from %f°', (degrees) => {
    expect(turnsFrom(twin, degrees)).toBeGreaterThan(1);
  });

  it.each([0, 180])('with one cylinder does not start from %i°', (degrees) => {
    const single = { ...twin, cylinder: { ...twin.cylinder, cylinders: 1 } };
    expect(turnsFrom(single, degrees)).toBe(0);
  });

  it('with both cranks on one pin does not start from 0° either', () => {
    const sameWay = { ...twin, cylinder: { ...twin.cylinder, crank_spacing: 0 } };
    expect(turnsFrom(sameWay, 0)).toBe(0);
  });
});

describe('a torque from full chest pressure', () => {
  /** Push over hold with every end at the pressure of whatever port of it is open. */
  function pushShare(system: EngineSystem, y: Float64Array, degrees: number): number {
    const { engine, slots } = system;
    y[0] = degrees * DEGREE;
    const { endVolume } = system.observe(y);
    const volumes = Array.from(endVolume);
    for (const [i, { admission, deadCentre, place }] of engine.ends.entries()) {
      const open = admission.effectiveArea(degrees * DEGREE - deadCentre, 0) > 0;
      const pressure = open ? engine.supply.pressure : engine.atmosphere.pressure;
      y[slots.mass(place - 2)] = (pressure * volumes[i]!) / (287.05 * 290);
      y[slots.energy(place - 2)] = (pressure * volumes[i]!) / 0.4;
    }
    const { applied, holding } = torqueBalance(system, y);
    return applied / holding;
  }

  it('suffices at every degree of the turn', () => {
    const system = engineSystem(buildEngine(twin));
    const { y } = atStart(from(twin, 0));
    const shares = Array.from({ length: 360 }, (_, degrees) => pushShare(system, y, degrees));
    expect(Math.min(...shares)).toBeGreaterThan(1);
  });
});
