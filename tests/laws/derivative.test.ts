/** The derivative of random engines in random states: the same each time, and no air made or lost. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialState } from '../../src/model/initial-state.ts';
import { FIRST_VOLUME } from '../../src/model/engine.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { differenceJacobian } from '../../src/numerics/difference-jacobian.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { holdEnergy } from '../../src/run/turning-view.ts';
import { arbitraryEngine } from '../support/arbitrary-engine.ts';
import { systemOf } from '../support/drive.ts';
import { holeLeak, pistonLeak, referenceSpec } from '../support/reference-engine.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Some state: masses and energies off those of room air by factors. */
const disturbances = fc.record({
  angle: real(-7, 7),
  speed: real(0.5, 200),
  factors: fc.array(real(0.5, 8), { minLength: 4, maxLength: 4 }),
});

type Disturbance = typeof disturbances extends fc.Arbitrary<infer D> ? D : never;

function disturbed(system: EngineSystem, { angle, speed, factors }: Disturbance): Float64Array {
  const { slots } = system;
  const y = initialState(system, angle, speed);
  for (let slot = slots.mass(0); slot < slots.firstTotal; slot += 1)
    y[slot]! *= factors[(slot - slots.mass(0)) % factors.length]!;
  return y;
}

const cases = fc.tuple(arbitraryEngine({ longestTime: 1, strays: 2 }), disturbances);
const settings = { numRuns: 40, seed: 5 };

function slopesOf(system: EngineSystem, y: Float64Array): Float64Array {
  const slopes = new Float64Array(system.dimension).fill(NaN);
  system.timeSlopes(1, y, slopes);
  return slopes;
}

describe('the derivative of any engine', () => {
  it('is the same again, whatever was asked in between', () => {
    const pure = fc.property(cases, disturbances, ([spec, one], other) => {
      const system = systemOf(spec);
      const y = disturbed(system, one);
      const kept = y.slice();
      const first = slopesOf(system, y);
      slopesOf(system, disturbed(system, other));
      expect(slopesOf(system, y)).toEqual(first);
      expect(y).toEqual(kept);
      expect(first.every(Number.isFinite)).toBe(true);
    });
    fc.assert(pure, settings);
  });

  it('makes no air and loses none', () => {
    const closed = fc.property(cases, ([spec, disturbance]) => {
      const system = systemOf(spec);
      const slopes = slopesOf(system, disturbed(system, disturbance));
      const { slots, engine } = system;
      const flows = engine.passages.map((_, i) => slopes[slots.passageMass(i)]!);
      const outside = (place: number): number => (place < FIRST_VOLUME ? 1 : 0);
      const entering = engine.passages.reduce(
        (sum, { from, to }, i) => sum + flows[i]! * (outside(from) - outside(to)),
        0,
      );
      const gross = flows.reduce((sum, flow) => sum + Math.abs(flow), 0);
      const stored = engine.volumes.reduce((sum, _, i) => sum + slopes[slots.mass(i)]!, 0);
      expect(Math.abs(stored - entering)).toBeLessThanOrEqual(1e-14 * gross);
    });
    fc.assert(closed, settings);
  });

  it('per radian is that per second over the speed, of the energy too', () => {
    const scaled = fc.property(cases, ([spec, disturbance]) => {
      const system = systemOf(spec);
      const y = disturbed(system, disturbance);
      const { speed } = disturbance;
      const perSecond = slopesOf(system, y);
      const { momentOfInertia, inertiaTorque } = system.observe(y);
      // d(½ J ω²)/dt = ω (J ω̇ + ½ J′ ω²), and the inertia torque of the pistons is −½ J′ ω².
      perSecond[SLOT.speed] = speed * (momentOfInertia * perSecond[SLOT.speed]! - inertiaTorque);
      const perRadian = new Float64Array(system.dimension);
      holdEnergy(system, y);
      system.angleSlopes(y[SLOT.crankAngle]!, y, perRadian);
      for (const [i, slope] of perRadian.entries()) expect(slope * speed).toBeCloseTo(perSecond[i]!, 6);
    });
    fc.assert(scaled, { numRuns: 10, seed: 5 });
  });

  it('has the Jacobian that difference quotients show', () => {
    const exact = fc.property(cases, ([spec, disturbance]) => {
      const system = systemOf(spec);
      const { coupledInAngle: coupled, dimension, slots } = system;
      // Possible temperatures, and no two pressures equal: flows turn round there, and either side has its own slope.
      const [a, b, c, d] = disturbance.factors as [number, number, number, number];
      const factors = [a, a * (0.82 + 0.05 * b), c, c * (0.87 + 0.05 * d)];
      const y = disturbed(system, { ...disturbance, factors });
      holdEnergy(system, y);
      const evaluate = (state: Float64Array, out: Float64Array): number => {
        system.angleSlopes(y[SLOT.crankAngle]!, state, out);
        return -1;
      };
      const slopes = new Float64Array(dimension);
      evaluate(y, slopes);
      const sizes = y.map(Math.abs);
      const columns = Int32Array.from(coupled);
      const expected = new Float64Array(dimension * coupled.length);
      const scratch = new Float64Array(dimension);
      differenceJacobian({ evaluate, columns, sizes, scratch }, y, slopes, expected);
      const found = new Float64Array(expected.length);
      evaluate(y, slopes);
      system.angleJacobian(y[SLOT.crankAngle]!, y, slopes, found, new Float64Array(dimension));
      // Rows of what is only counted as wasted bend at zero flow; all others must agree.
      for (let row = 0; row < slots.firstTotal; row += 1) {
        const size = (entry: number, k: number): number => Math.abs(entry) * sizes[columns[k]!]!;
        const own = [...expected.subarray(row * coupled.length, (row + 1) * coupled.length)];
        // A quotient of differences is no better than the rounding of what is subtracted.
        const rounding = 2 ** -24 * Math.abs(slopes[row]!);
        const allowed = 1e-3 * Math.max(...own.map(size)) + rounding;
        for (const [k, entry] of own.entries())
          expect(size(found[row * coupled.length + k]! - entry, k)).toBeLessThanOrEqual(allowed);
      }
    });
    fc.assert(exact, settings);
  });
});

describe('a leak of no size', () => {
  it.each([
    ['past the piston', pistonLeak(0)],
    ['out of the chest', holeLeak('chest to room', 0)],
    ['into the cylinder', holeLeak('chest to cylinder', 0)],
  ])('%s leaves every physical slope as it is, to the last bit', (_name, leak) => {
    const without = systemOf(referenceSpec({ leaks: [] }));
    const withLeak = systemOf(referenceSpec({ leaks: [leak] }));
    const same = fc.property(disturbances, (disturbance) => {
      const bare = slopesOf(without, disturbed(without, disturbance));
      const leaky = slopesOf(withLeak, disturbed(withLeak, disturbance));
      const differs = (_: number, slot: number): boolean => leaky[slot] !== bare[slot];
      expect(bare.slice(0, without.slots.firstTotal).filter(differs)).toHaveLength(0);
      const ofLeak = withLeak.slots.passageMass(withLeak.engine.passages.length - 1);
      expect(Math.abs(leaky[ofLeak]!)).toBe(0);
    });
    fc.assert(same, settings);
  });

  // Not to the last bit: the integrator judges its steps by the mean error of all slots, and a leak has two more.
  it('leaves the settled speed as it is, within the tolerance of the integrator', () => {
    const speedWith = (leaks: EngineSpec['leaks']): number =>
      runEngine(referenceSpec({ leaks })).settled!.speed;
    expect(Math.abs(speedWith([pistonLeak(0)]) / speedWith([]) - 1)).toBeLessThan(1e-5);
  });
});
