/** Steps that need not be shown: none that matters is kept from those who look, and looking changes nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Journey, OdeProblem } from '../../../src/numerics/integrator.ts';
import { RosenbrockIntegrator } from '../../../src/numerics/rosenbrock-integrator.ts';

/** Swings about zero, ever less. */
const pendulum: OdeProblem = {
  dimension: 2,
  derivative: (_x, y, slopes) => {
    slopes[0] = y[1]!;
    slopes[1] = -y[0]! - 0.1 * y[1]!;
  },
};

function swung(journey: Partial<Journey>): { arrival: object; y: Float64Array; shown: number[] } {
  const integrator = new RosenbrockIntegrator(pendulum, {
    relative: 1e-4,
    absolute: new Float64Array(2).fill(1e-4),
  });
  const y = Float64Array.of(1, 0);
  const shown: number[] = [];
  const onStep: Journey['onStep'] = (step) => {
    let least = Infinity;
    for (let i = 0; i <= 20; i += 1)
      least = Math.min(least, step.component(0, step.from + (i / 20) * (step.to - step.from)));
    shown.push(least);
  };
  const arrival = integrator.advance(0, y, 12, { stepLimit: 1000, onStep, ...journey });
  return { arrival, y, shown };
}

describe('a journey that is calm above a value', () => {
  it('shows the steps in which the component comes below it, and no other', () => {
    const all = swung({}).shown;
    const some = swung({ calmAbove: { component: 0, value: 0.3 } }).shown;
    expect(some).toEqual(all.filter((least) => least <= 0.3));
    expect(some.length).toBeGreaterThan(0);
    expect(some.length).toBeLessThan(all.length);
  });

  it('finds the event that one which shows every step finds, in the same place and state', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.8, max: 0.9, noNaN: true }), (value) => {
        const events = [{ value: (_x: number, component: (i: number) => number) => component(0) - value }];
        const { arrival, y } = swung({ events });
        const calm = swung({ events, calmAbove: { component: 0, value } });
        expect(calm.arrival).toEqual(arrival);
        expect(calm.y).toEqual(y);
      }),
    );
  });

  it('shows nothing above minus infinity, and everything while nothing is said', () => {
    expect(swung({ calmAbove: { component: 0, value: -Infinity } }).shown).toEqual([]);
    expect(swung({}).shown.length).toBeGreaterThan(20);
  });
});
