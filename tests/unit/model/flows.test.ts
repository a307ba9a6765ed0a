/** All passages at once say the same as each one asked by itself. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { engineSystem } from '../../../src/model/system.ts';
import { buildEngine } from '../../../src/model/engine.ts';
import { arbitraryEngine } from '../../support/arbitrary-engine.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it('in random engines and states', () => {
  const same = fc.property(
    arbitraryEngine({ longestTime: 1, strays: 2 }),
    real(-20, 20),
    real(0.5, 200),
    fc.array(real(0.5, 8), { minLength: 4, maxLength: 4 }),
    (spec, angle, speed, factors) => {
      const engine = buildEngine(spec);
      const system = engineSystem(engine);
      const y = initialState(system, angle, speed);
      for (let slot = system.slots.mass(0); slot < system.slots.firstTotal; slot += 1)
        y[slot]! *= factors[slot % factors.length]!;
      const { pressure, temperature, massFlow } = system.observe(y);
      for (const [i, { from, to, lag, passage }] of engine.passages.entries()) {
        const own = passage.massFlow(
          angle - lag,
          pressure[from]!,
          temperature[from]!,
          pressure[to]!,
          temperature[to]!,
          speed,
        );
        // Openings that begin as a root, next to where they begin, feel the rounding of a far angle.
        expect(Math.abs(massFlow[i]! - own)).toBeLessThanOrEqual(1e-9 * Math.abs(own) + 1e-18);
      }
    },
  );
  fc.assert(same, { numRuns: 60, seed: 11 });
});
