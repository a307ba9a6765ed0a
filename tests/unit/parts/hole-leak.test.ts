/** A hole leaks as a nozzle of its contracted area does. */
import { expect, it } from 'vitest';
import { holeLeak } from '../../support/reference-engine.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { context } from './valve-gears/bench.ts';

const flow = (diameter: number): number =>
  holeLeak('chest to room', diameter).build(context).massFlow(0, 7e5, 293.15, 1e5, 293.15, 0);

it('a hole of 1 mm, at 0.65 of its area, passes 0.84 g/s of choked air from 7 bar', () => {
  // ṁ = 0.0404 Cd A p/√T, the usual figure for air in SI units (gas-dynamics texts).
  expectWithin(flow(1e-3), (0.0404 * 0.65 * (Math.PI / 4) * 1e-6 * 7e5) / Math.sqrt(293.15), 1e-3);
  expectWithin(flow(1e-3), 0.843e-3, 2e-3);
});

it('twice the diameter passes four times as much', () => {
  expectWithin(flow(2e-3), 4 * flow(1e-3), 1e-12);
});

it('between chest and room it leads where it says', () => {
  expect(holeLeak('chest to room', 1e-3).build(context)).toMatchObject({
    role: 'leak',
    from: 'chest',
    to: 'atmosphere',
  });
});
