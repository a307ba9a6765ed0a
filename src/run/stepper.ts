/**
 * Carries one engine's state over a smooth stretch: in crank angle while it turns briskly, in time while it is at rest,
 * slow or turning back.
 */
import { odexIntegrator } from '../numerics/odex-integrator.ts';
import type { Arrival, Integrator, Journey } from '../numerics/integrator.ts';
import { FIRST_TOTAL, SLOT } from '../model/slots.ts';
import type { Direction, EngineSystem } from '../model/system.ts';

/**
 * Relative error per step. The energy ledger must close to 1e-6 over a whole run, and the speed's error feeds it
 * directly; ten times looser fails that, ten times tighter only costs.
 */
const RELATIVE_TOLERANCE = 1e-8;

export interface Stepper {
  inAngle(y: Float64Array, toAngle: number, journey: Journey): Arrival;
  inTime(direction: Direction, y: Float64Array, toTime: number, journey: Journey): Arrival;
  readonly counters: { readonly derivativeCalls: number; readonly acceptedSteps: number };
}

/** Absolute tolerances: a small share of room air in each volume; the ledgers do not steer. */
function absoluteTolerances({ engine, dimension }: EngineSystem): Float64Array {
  const { gas, atmosphere } = engine;
  const mass = (volume: number): number =>
    (volume * atmosphere.pressure) / (gas.specificGasConstant * atmosphere.temperature);
  const energy = (volume: number): number => (volume * atmosphere.pressure) / (gas.heatCapacityRatio - 1);
  const scale = new Float64Array(dimension).fill(Infinity);
  scale[SLOT.crankAngle] = 1e-2;
  scale[SLOT.time] = 1e-2;
  scale[SLOT.speed] = 1e-1;
  scale[SLOT.chestMass] = mass(engine.chestVolume);
  scale[SLOT.chestEnergy] = energy(engine.chestVolume);
  scale[SLOT.cylinderMass] = mass(engine.clearanceVolume);
  scale[SLOT.cylinderEnergy] = energy(engine.clearanceVolume);
  return scale.map((value, i) => (i < FIRST_TOTAL ? RELATIVE_TOLERANCE * value : Infinity));
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

  return {
    inAngle: (y, toAngle, journey) =>
      integrator('angle', system.angleSlopes).advance(y[SLOT.crankAngle]!, y, toAngle, journey),
    inTime: (direction, y, toTime, journey) =>
      integrator(`time ${direction}`, (state, slopes) => {
        system.timeSlopes(direction, state, slopes);
      }).advance(y[SLOT.time]!, y, toTime, journey),
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
