/** The first event within a step, on steps whose interpolant is known exactly. */
import { describe, expect, it } from 'vitest';
import { firstEvent } from '../../../src/numerics/events.ts';
import type { AcceptedStep, EventFunction } from '../../../src/numerics/integrator.ts';

/** A step over which the one component follows f. */
const stepOf = (f: (x: number) => number, from = 0, to = 1): AcceptedStep => ({
  from,
  to,
  component: (_index, x) => f(x),
  interpolate: (x, out) => {
    out[0] = f(x);
  },
});

const reachesZero: EventFunction = { value: (_x, component) => component(0) };
const reaches = (place: number): EventFunction => ({ value: (x) => place - x });

describe('the first event', () => {
  it('lies where the function crosses zero, to the last bit but one', () => {
    const found = firstEvent(
      stepOf((x) => Math.cos(3 * x)),
      [reachesZero],
    );
    expect(found?.event).toBe(0);
    expect(Math.abs(found!.x - Math.PI / 6)).toBeLessThan(2e-16);
  });

  it('is none while the function stays above zero', () => {
    expect(
      firstEvent(
        stepOf((x) => 1 + x),
        [reachesZero],
      ),
    ).toBeUndefined();
  });

  it('is none where the function rises', () => {
    expect(
      firstEvent(
        stepOf((x) => x - 0.5),
        [reachesZero],
      ),
    ).toBeUndefined();
  });

  it('is the first of two crossings inside one step, although the ends are both above zero', () => {
    const dip = (x: number): number => (x - 0.4) * (x - 0.65);
    expect(firstEvent(stepOf(dip), [reachesZero])!.x).toBeCloseTo(0.4, 14);
  });

  it('is found in a dip as narrow as a fifth of the step, wherever it lies', () => {
    const places = Array.from({ length: 79 }, (_, i) => (i + 1) / 100);
    const missed = places.filter((place) => {
      const found = firstEvent(
        stepOf((x) => (x - place) * (x - place - 0.2)),
        [reachesZero],
      );
      return found === undefined || Math.abs(found.x - place) > 1e-12;
    });
    expect(missed).toEqual([]);
  });

  it('may be a touch of zero', () => {
    expect(
      firstEvent(
        stepOf((x) => (x - 0.5) ** 2),
        [reachesZero],
      )!.x,
    ).toBeCloseTo(0.5, 6);
  });
});

describe('an event on the edge of a step', () => {
  const falls = (x: number): number => 1 - x;

  it('counts for the step that ends there', () => {
    expect(firstEvent(stepOf(falls), [reachesZero])).toEqual({ event: 0, x: 1 });
  });

  it('does not count again for the step that begins there', () => {
    expect(firstEvent(stepOf(falls, 1, 2), [reachesZero])).toBeUndefined();
  });

  it('does not count when the function is below zero from the start', () => {
    expect(
      firstEvent(
        stepOf((x) => -1 - x),
        [reachesZero],
      ),
    ).toBeUndefined();
  });
});

describe('of several events', () => {
  it('the earliest counts, whichever was named first', () => {
    const step = stepOf((x) => x);
    expect(firstEvent(step, [reaches(0.7), reaches(0.3)])!.event).toBe(1);
    expect(firstEvent(step, [reaches(0.3), reaches(0.7)])!.event).toBe(0);
  });

  it('the earliest counts between the same two probes', () => {
    const found = firstEvent(
      stepOf((x) => x),
      [reaches(0.52), reaches(0.51)],
    );
    expect(found!.event).toBe(1);
    expect(found!.x).toBeCloseTo(0.51, 14);
  });

  it('the one named first counts when they coincide', () => {
    const step = stepOf((x) => x);
    expect(firstEvent(step, [reaches(0.4), reaches(0.4)])!.event).toBe(0);
  });
});
