/**
 * An engine whose cylinder rocks: volume, lever, friction and inertia against the triangle of crank centre, trunnion and
 * crank pin in coordinates. Crank centre at the origin, trunnion at (L, 0) with the cover beyond it.
 */
import { describe, expect, it } from 'vitest';
import { FIRST_VOLUME } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { angleAtStrokeFraction, strokeFraction } from '../../src/parts/crank-train.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { measuredTurn, stateAfterTurns, systemOf } from '../support/drive.ts';
import { chosen } from '../support/chosen.ts';
import { expectWithin } from '../support/expect-within.ts';
import { DEGREE, referenceSpec } from '../support/reference-engine.ts';

const L = 0.09;
const r = 0.03;
const ROOM = 101_325;
const PISTON = (Math.PI * 0.05 ** 2) / 4;
const MASS = 0.35;

const hole = { hole_diameter: 6e-3, angle: 14 * DEGREE };
const system = systemOf(
  referenceSpec({
    cylinder: { stroke: 2 * r, rod_length: L, reciprocating_mass: MASS },
    leaks: [],
    friction: { piston_force: 20, piston_force_per_pressure: 0 },
    valve_gear: chosen(valveGears, 'oscillating cylinder', {
      port_diameter: 6e-3,
      hole_circle_radius: 32e-3,
      face_diameter: 0.1,
      pivot_diameter: 8e-3,
      face_gap: 0,
      admission: hole,
      exhaust: hole,
    }),
  }),
);
const { engine, slots } = system;

/** Distance of the crank pin from the trunnion. */
const pinToTrunnion = (angle: number): number => Math.hypot(r * Math.cos(angle) - L, r * Math.sin(angle));

/** Distance of the line through pin and trunnion from the crank centre: the arm on which the piston rod pulls. */
const arm = (angle: number): number => (L * r * Math.sin(angle)) / pinToTrunnion(angle);

const angles = [0.2, 1, Math.acos(r / L), 2, 3, 3.5, 5, 6.1];

function filled(angle: number, speed: number): Float64Array {
  const y = initialState(system, angle, speed);
  const cylinder = engine.ends[0].place - FIRST_VOLUME;
  y[slots.mass(cylinder)]! *= 3;
  y[slots.energy(cylinder)]! *= 3;
  return y;
}

describe('a cylinder that rocks, trunnion at three cranks', () => {
  it.each(angles)('holds what lies between cover and piston at %f rad', (angle) => {
    const swept = PISTON * (pinToTrunnion(angle) - (L - r));
    const { endVolume } = system.observe(filled(angle, 0));
    expectWithin(endVolume[0]!, engine.ends[0].clearanceVolume + swept, 1e-12);
  });

  it.each(angles)('pulls on the arm of its rod at %f rad, and rubs on the same', (angle) => {
    const { gasTorque, pistonTorque } = system.observe(filled(angle, 0));
    expectWithin(gasTorque, 2 * ROOM * PISTON * arm(angle), 1e-10);
    expectWithin(pistonTorque, 20 * Math.abs(arm(angle)), 1e-10);
  });

  it.each(angles)('carries its piston along its own axis at %f rad', (angle) => {
    // The kinetic energy along the axis, ½ M (arm ω)², and what its change with the angle takes.
    const h = 1e-5;
    const squared = (at: number): number => arm(at) ** 2;
    const change = (squared(angle + h) - squared(angle - h)) / (2 * h);
    const { inertiaTorque, momentOfInertia } = system.observe(filled(angle, 20));
    expectWithin(momentOfInertia, 0.03 + MASS * squared(angle), 1e-12);
    expect(inertiaTorque / MASS).toBeCloseTo((-change / 2) * 400, 6);
  });

  it('has gone half its stroke when the pin is half-way between nearest and farthest', () => {
    const angle = angleAtStrokeFraction(engine.crank, 0.5);
    expect(pinToTrunnion(angle)).toBeCloseTo(L, 12);
    for (const share of [0, 0.1, 0.5, 0.93, 1])
      expect(strokeFraction(engine.crank, angleAtStrokeFraction(engine.crank, share))).toBeCloseTo(share, 12);
  });

  it('keeps its books over a turn', () => {
    const { residuals } = measuredTurn(system, stateAfterTurns(system, 30, 2));
    expect(residuals.mass).toBeLessThan(1e-9);
    expect(residuals.energy).toBeLessThan(1e-7);
  });
});
