/** The integrator behind everything, on equations whose solution is known. */
import { describe, expect, it } from 'vitest';
import type { EventFunction, Integrator } from '../../src/numerics/integrator.ts';
import { odexIntegrator } from '../../src/numerics/odex-integrator.ts';

const integratorOf = (
  derivative: (x: number, y: Float64Array, slopes: Float64Array) => void,
  tolerance: number,
): Integrator =>
  odexIntegrator(
    { dimension: 2, derivative },
    { relative: tolerance, absolute: Float64Array.of(tolerance, tolerance) },
  );

describe('a short pulse late in a quiet stretch', () => {
  // y′ = k/(1 + k²(x − c)²), y = arctan k(x − c): the step has grown long by then and must be taken back.
  const sharpness = 20;
  const cases = [1e-6, 1e-8, 1e-10].flatMap((tolerance) =>
    [1, 2, 3, 4, 5, 6, 7, 8, 10].map((length) => ({ tolerance, length })),
  );
  it.each(cases)('tolerance $tolerance, $length long', ({ tolerance, length }) => {
    const centre = length - 0.3;
    const pulse = (x: number, _y: Float64Array, slopes: Float64Array): void => {
      slopes[0] = sharpness / (1 + (sharpness * (x - centre)) ** 2);
      slopes[1] = 0;
    };
    const y = Float64Array.of(Math.atan(-sharpness * centre), 0);
    const arrival = integratorOf(pulse, tolerance).advance(0, y, length, { stepLimit: 10_000 });
    expect(arrival).toEqual({ reason: 'end', x: length });
    expect(Math.abs(y[0]! - Math.atan(sharpness * 0.3))).toBeLessThan(100 * tolerance);
  });
});

describe('a swing', () => {
  const swing = (_x: number, y: Float64Array, slopes: Float64Array): void => {
    slopes[0] = y[1]!;
    slopes[1] = -y[0]!;
  };
  const passesDown: EventFunction = { value: (_x, component) => component(0) - 0.5 };

  it('comes back after ten periods', () => {
    const y = Float64Array.of(1, 0);
    integratorOf(swing, 1e-10).advance(0, y, 20 * Math.PI, { stepLimit: 10_000 });
    expect(Math.abs(y[0]! - 1)).toBeLessThan(1e-8);
    expect(Math.abs(y[1]!)).toBeLessThan(1e-8);
  });

  it('passes a mark on its way down where the cosine does, again and again', () => {
    const y = Float64Array.of(1, 0);
    const integrator = integratorOf(swing, 1e-10);
    let x = 0;
    for (let period = 0; period < 3; period += 1) {
      const arrival = integrator.advance(x, y, x + 10, { events: [passesDown], stepLimit: 10_000 });
      expect(arrival.reason).toBe('event');
      expect(Math.abs(arrival.x - (Math.PI / 3 + 2 * Math.PI * period))).toBeLessThan(1e-7);
      x = arrival.x;
    }
  });

  it('goes through x = 0 like through any other place', () => {
    const y = Float64Array.of(Math.cos(-2), -Math.sin(-2));
    const integrator = integratorOf(swing, 1e-10);
    expect(integrator.advance(-2, y, 0, { stepLimit: 10_000 })).toEqual({ reason: 'end', x: 0 });
    expect(Math.abs(y[0]! - 1)).toBeLessThan(1e-8);
  });
});
