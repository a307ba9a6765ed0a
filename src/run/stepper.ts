/**
 * Carries one engine's state over a smooth stretch: in crank angle while it turns briskly, in time while it is at rest,
 * slow or turning back.
 */
import { odexIntegrator } from '../numerics/odex-integrator.ts';
import type { Arrival, Integrator, Journey } from '../numerics/integrator.ts';
import { SLOT } from '../model/slots.ts';
import type { Direction, EngineSystem } from '../model/system.ts';

/**
 * Relative error per step. Settled speeds then agree with those of a ten times tighter one to 1e-5; a hundred times
 * looser, turns differ by so much error that some engines never count as settled.
 */
const RELATIVE_TOLERANCE = 1e-7;

export interface Stepper {
  inAngle(y: Float64Array, toAngle: number, journey: Journey): Arrival;
  inTime(direction: Direction, y: Float64Array, toTime: number, journey: Journey): Arrival;
  readonly counters: { readonly derivativeCalls: number; readonly acceptedSteps: number };
}

/** Absolute tolerances: a share of room air in the smallest each volume gets; the ledgers do not steer. */
function absoluteTolerances({ engine, slots, dimension }: EngineSystem): Float64Array {
  const { gas, atmosphere } = engine;
  const massPerVolume = atmosphere.pressure / (gas.specificGasConstant * atmosphere.temperature);
  const energyPerVolume = atmosphere.pressure / (gas.heatCapacityRatio - 1);
  const scale = new Float64Array(dimension).fill(Infinity);
  scale[SLOT.crankAngle] = 1e-2;
  scale[SLOT.time] = 1e-2;
  scale[SLOT.speed] = 1e-1;
  const firstEnd = engine.volumes.length - engine.ends.length;
  for (const [i, { fixedVolume }] of engine.volumes.entries()) {
    const volume = fixedVolume ?? engine.ends[i - firstEnd]!.clearanceVolume;
    scale[slots.mass(i)] = massPerVolume * volume;
    scale[slots.energy(i)] = energyPerVolume * volume;
  }
  return scale.map((value) => RELATIVE_TOLERANCE * value);
}

export function engineStepper(system: EngineSystem): Stepper {
  const { dimension } = system;
  const tolerances = { relative: RELATIVE_TOLERANCE, absolute: absoluteTolerances(system) };
  const made = new Map<string, Integrator>();
  const integrator = (
    name: string,
    derivative: (y: Float64Array, slopes: Float64Array) => void,
  ): Integrator => {
    const known = made.get(name);
    if (known) return known;
    const fresh = odexIntegrator(
      {
        dimension,
        derivative: (_x, y, slopes) => {
          derivative(y, slopes);
        },
      },
      tolerances,
    );
    made.set(name, fresh);
    return fresh;
  };
  const total = (key: keyof Integrator['counters']): number =>
    [...made.values()].reduce((sum, one) => sum + one.counters[key], 0);

  /** Sets the slot that went along with the independent variable to the stop itself, free of rounding. */
  const arrived = (arrival: Arrival, y: Float64Array, slot: number): Arrival => {
    if (arrival.reason === 'end') y[slot] = arrival.x;
    return arrival;
  };

  return {
    inAngle: (y, toAngle, journey) => {
      const angle = integrator('angle', (state, slopes) => {
        system.angleSlopes(state, slopes);
      });
      return arrived(angle.advance(y[SLOT.crankAngle]!, y, toAngle, journey), y, SLOT.crankAngle);
    },
    inTime: (direction, y, toTime, journey) => {
      const time = integrator(`time ${direction}`, (state, slopes) => {
        system.timeSlopes(direction, state, slopes);
      });
      return arrived(time.advance(y[SLOT.time]!, y, toTime, journey), y, SLOT.time);
    },
    counters: {
      get derivativeCalls() {
        return total('derivativeCalls');
      },
      get acceptedSteps() {
        return total('acceptedSteps');
      },
    },
  };
}
