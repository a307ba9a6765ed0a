/**
 * Two methods for one problem: the first as long as it gets along, the second for good once it does not.
 *
 * An explicit method is the closer one on smooth stretches and hopeless on stiff ones; whether a problem is stiff shows
 * when its steps stay short.
 */
import type { Integrator } from './integrator.ts';

/** `patience` is how many steps of one journey the first method may need; what it cannot step over is the second's too. */
export function patientIntegrator(
  first: Integrator,
  makeSecond: () => Integrator,
  patience: number,
): Integrator {
  let second: Integrator | undefined;
  const total = (key: keyof Integrator['counters']): number =>
    first.counters[key] + (second?.counters[key] ?? 0);

  return {
    counters: {
      get derivativeCalls() {
        return total('derivativeCalls');
      },
      get acceptedSteps() {
        return total('acceptedSteps');
      },
    },
    advance(x, y, xEnd, journey) {
      if (second) return second.advance(x, y, xEnd, journey);
      const { stepLimit } = journey;
      const arrival = first.advance(x, y, xEnd, { ...journey, stepLimit: Math.min(patience, stepLimit) });
      if (arrival.reason === 'end' || arrival.reason === 'event' || stepLimit <= patience) return arrival;
      second = makeSecond();
      return second.advance(arrival.x, y, xEnd, { ...journey, stepLimit: stepLimit - patience });
    },
  };
}
