/** One turn: sent from stop to stop, given up when it gets too slow on its way or the integrator gives up. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import type { Arrival } from '../../../src/numerics/integrator.ts';
import { failedTurn } from '../../../src/run/failed-turn.ts';
import { oneTurn, type Watcher } from '../../../src/run/one-turn.ts';
import { stepperByLaw, stepThrough } from '../../support/stepper-by-law.ts';

const TURN = 2 * Math.PI;
const STOPS = [0, 1, 4];

/** A state so many turns on, at a speed. */
function stateAt(turns: number, speed: number): Float64Array {
  const y = new Float64Array(7);
  y[SLOT.crankAngle] = turns * TURN;
  y[SLOT.speed] = speed;
  return y;
}

describe('one turn', () => {
  it('goes to every stop in its order and ends at the next top dead centre', () => {
    const { stepper, asked } = stepperByLaw({ stops: STOPS });
    const y = stateAt(3, 20);
    const stops: number[] = [];
    const ended = oneTurn(stepper, y, {
      onStop: (stop) => {
        stops.push(stop);
        expect(y[SLOT.crankAngle]).toBe(3 * TURN + stop);
      },
    });
    expect(ended).toBeUndefined();
    expect(asked.map(({ to }) => to)).toEqual([3 * TURN + 1, 3 * TURN + 4, 4 * TURN]);
    expect(stops).toEqual([1, 4, TURN]);
    expect(y[SLOT.crankAngle]).toBe(4 * TURN);
  });

  it('has steps enough for each stretch, but not without end', () => {
    const { stepper, asked } = stepperByLaw({ stops: STOPS });
    oneTurn(stepper, stateAt(0, 20));
    for (const { journey } of asked) {
      expect(journey.stepLimit).toBeGreaterThan(4000);
      expect(journey.stepLimit).toBeLessThan(20_000);
    }
  });

  it('wants to see only what is too slow, unless somebody watches', () => {
    const calmOf = (watcher: Watcher): unknown[] => {
      const { stepper, asked } = stepperByLaw({ stops: STOPS });
      oneTurn(stepper, stateAt(0, 20), watcher);
      return asked.map(({ journey }) => journey.calmAbove);
    };
    const quick = { component: SLOT.speed, value: 0.5 };
    expect(calmOf({})).toEqual([quick, quick, quick]);
    expect(calmOf({ onStep: () => undefined })).toEqual([undefined, undefined, undefined]);
  });

  it('shows every step to who watches', () => {
    const step = stepThrough(stateAt(0, 20), 0, 0.5);
    const { stepper } = stepperByLaw({
      stops: STOPS,
      inAngle: (_y, _to, { onStep }) => {
        onStep?.(step);
        return undefined;
      },
    });
    const seen: unknown[] = [];
    oneTurn(stepper, stateAt(0, 20), { onStep: (one) => seen.push(one) });
    expect(seen).toEqual([step, step, step]);
  });

  it.each([
    { slowest: 0.49, ended: { reason: 'slow' } },
    { slowest: 0.51, ended: undefined },
  ])('that comes down to $slowest rad/s on its way ends as $ended', ({ slowest, ended }) => {
    const { stepper, asked } = stepperByLaw({
      stops: STOPS,
      // Only at the end of a step within the second stretch; at the stop it is brisk again.
      inAngle: (y, to, { onStep }) => {
        const slow = stepThrough(stateAt(0, slowest), to - 0.2, to - 0.1);
        if (to === 4) onStep?.({ ...slow, component: (i, x) => (x === slow.to ? slow.component(i) : 20) });
        y[SLOT.crankAngle] = to;
        return undefined;
      },
    });
    expect(oneTurn(stepper, stateAt(0, 20))).toEqual(ended);
    expect(asked).toHaveLength(ended ? 2 : 3);
  });

  it('that begins too slow is given up at its first stop', () => {
    const { stepper, asked } = stepperByLaw({ stops: STOPS });
    expect(oneTurn(stepper, stateAt(0, 0.4))).toEqual({ reason: 'slow' });
    expect(asked).toHaveLength(1);
  });

  it.each<Arrival>([
    { reason: 'step-limit', x: 2 },
    { reason: 'non-finite', x: 2, component: 5 },
  ])('in which the integrator gives up for $reason ends there and says so', (arrival) => {
    const { stepper, asked } = stepperByLaw({ stops: STOPS, inAngle: () => arrival });
    const stops: number[] = [];
    expect(oneTurn(stepper, stateAt(0, 20), { onStop: (stop) => stops.push(stop) })).toEqual(arrival);
    expect(asked).toHaveLength(1);
    expect(stops).toEqual([]);
  });
});

describe('a measured turn that gave up', () => {
  it('means for the run what it says of itself', () => {
    expect(failedTurn({ reason: 'slow' })).toEqual({ kind: 'hardly gets round' });
    expect(failedTurn({ reason: 'step-limit', x: 1 })).toEqual({ kind: 'step-limit' });
    expect(failedTurn({ reason: 'non-finite', x: 1, component: 4 })).toEqual({
      kind: 'non-finite',
      component: 4,
    });
  });
});
