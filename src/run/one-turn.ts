/** One whole turn, from top dead centre to top dead centre, with the edges of the ports as stops. */
import type { Arrival, Journey } from '../numerics/integrator.ts';
import type { TangentFlow } from '../numerics/tangent-flow.ts';
import { SLOT } from '../model/slots.ts';
import { SLOW } from './speeds.ts';
import type { Stepper } from './stepper.ts';

/** Enough to find that a stretch is only to be followed loosely, and then to follow it. */
const STRETCH_STEPS = 8000;

/** Why a turn was not finished: too slow to get round, or given up by the integrator. */
export type TurnFailure = { readonly reason: 'slow' } | Exclude<Arrival, { reason: 'end' | 'event' }>;

/** Looks on while a turn is run. */
export interface Watcher {
  readonly onStep?: Journey['onStep'];
  readonly tangent?: TangentFlow;
  /** Told of every stop, as the crank angle since top dead centre. */
  readonly onStop?: (angle: number) => void;
}

/** Carries a state at top dead centre through one turn. One that ends early leaves the state where it ended. */
export function oneTurn(
  stepper: Stepper,
  y: Float64Array,
  { onStep, onStop, ...others }: Watcher = {},
): TurnFailure | undefined {
  const origin = y[SLOT.crankAngle]!;
  const { stops } = stepper;
  let slowest = y[SLOT.speed]!;
  const journey: Journey = {
    ...others,
    stepLimit: STRETCH_STEPS,
    calmAbove: onStep ? undefined : { component: SLOT.speed, value: SLOW },
    onStep: (step) => {
      slowest = Math.min(slowest, step.component(SLOT.speed, step.to));
      onStep?.(step);
    },
  };
  for (let i = 1; i <= stops.length; i += 1) {
    const stop = stops[i] ?? 2 * Math.PI;
    const arrival = stepper.inAngle(y, origin + stop, journey);
    if (slowest < SLOW) return { reason: 'slow' };
    if (arrival.reason === 'step-limit' || arrival.reason === 'non-finite') return arrival;
    onStop?.(stop);
  }
  return undefined;
}
