/**
 * Starting from rest: the air must push harder than the engine holds.
 *
 * A tight engine without leaks, its admission open at rest, fills to the supply pressure p and pushes with
 * (p − p_atm) A x′(θ); it holds with break-away, gear and load torque and the piston's friction on the same lever.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { pistonTravelRate } from '../../src/parts/crank-train.ts';
import { crankTrain, cylinderEnds } from '../../src/parts/cylinder.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { Outcome } from '../../src/run/outcome.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { constantLoad, DEGREE, referenceSpec, spoolGear } from '../support/reference-engine.ts';

/** The reference engine without leaks, holding with more at rest than the air can push with anywhere. */
const engineAt = (degrees: number, breakaway: number): EngineSpec =>
  referenceSpec({
    valve_gear: spoolGear({ clearance: 0 }),
    leaks: [],
    load: constantLoad(0),
    friction: { breakaway_torque: breakaway },
    start: { crank_angle: degrees * DEGREE },
    run: { longest_time: 20 },
  });

/** Torque [N m] that the full supply pressure puts on the crank, less piston friction and valve gear. */
function pushAt(degrees: number): number {
  const { cylinder, supply, atmosphere, friction } = referenceSpec();
  const angle = degrees * DEGREE;
  const lever = pistonTravelRate(crankTrain(cylinder), Math.sin(angle), Math.cos(angle));
  const gauge = supply.pressure - atmosphere.pressure;
  const sliding = friction.piston_force + friction.piston_force_per_pressure * gauge;
  return gauge * cylinderEnds(cylinder)[0]!.area * lever - sliding * lever - 0.06;
}

describe('with the admission open at rest', () => {
  const angles = [1, 5, 10, 20, 40, 60, 70];

  it.each(angles)('at %i° the missing torque is the difference of push and hold', (degrees) => {
    const { outcome } = runEngine(engineAt(degrees, 50));
    expect(outcome.kind).toBe('no-start');
    // The chest counts as full when its pressure changes by less than 1 % a second.
    expect(Math.abs(outcome.missingTorque! / (50 - pushAt(degrees)) - 1)).toBeLessThan(1e-3);
  });

  it.each(angles)('at %i° a hair less than the push lets it move, a hair more does not', (degrees) => {
    const push = pushAt(degrees);
    const moves = (breakaway: number): boolean =>
      Math.max(...runEngine(engineAt(degrees, breakaway)).trace.speed) > 0;
    expect(moves(0.99 * push)).toBe(true);
    expect(moves(1.01 * push)).toBe(false);
  });
});

describe('from anywhere in the turn', () => {
  let outcomes: readonly (Outcome & { readonly degrees: number })[] = [];
  const startsFrom = (): number[] => outcomes.filter(({ turns }) => turns > 0).map(({ degrees }) => degrees);

  beforeAll(() => {
    outcomes = Array.from({ length: 24 }, (_, i) => {
      const degrees = 15 * i + 3;
      const spec = referenceSpec({ start: { crank_angle: degrees * DEGREE }, run: { longest_time: 4 } });
      return { degrees, ...runEngine(spec).outcome };
    });
  });

  it('it starts unaided early in the working stroke', () => {
    expect(startsFrom()).toEqual(expect.arrayContaining([18, 33, 48]));
  });

  it('it does not start at dead centre or with the exhaust open', () => {
    expect(startsFrom().filter((degrees) => degrees < 10 || degrees > 150)).toEqual([]);
  });

  it('a start that ends at rest says how much torque is missing', () => {
    const failed = outcomes.filter(({ kind }) => kind === 'no-start');
    expect(failed.length).toBeGreaterThan(12);
    for (const { missingTorque } of failed) expect(missingTorque).toBeGreaterThan(0);
  });
});

it('what is missing, taken off the friction at rest, makes it move', () => {
  const spec = engineAt(40, 20);
  const { missingTorque } = runEngine(spec).outcome;
  const eased = (by: number): EngineSpec => engineAt(40, 20 - by * missingTorque!);
  expect(Math.max(...runEngine(eased(1.01)).trace.speed)).toBeGreaterThan(0);
  expect(Math.max(...runEngine(eased(0.99)).trace.speed)).toBe(0);
});
