/**
 * Carries one engine's state over a smooth stretch: in crank angle while it turns briskly, in time while it is at rest,
 * slow or turning back.
 */
import { odexIntegrator } from '../numerics/odex-integrator.ts';
import type { Arrival, Integrator, Journey } from '../numerics/integrator.ts';
import { patientIntegrator } from '../numerics/patient-integrator.ts';
import { RosenbrockIntegrator } from '../numerics/rosenbrock-integrator.ts';
import { SLOT } from '../model/slots.ts';
import type { Direction, EngineSystem } from '../model/system.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import { AngleProblem, TimeProblem } from './stepper-problems.ts';
import { tolerances, turningTolerances } from './stepper-tolerances.ts';
import { holdEnergy, holdSpeed, missedRoomWork, turningJourney } from './turning-view.ts';

/** How closely a state is followed: relative errors per step, and by which method near rest. */
export interface Accuracy {
  readonly turning: number;
  readonly nearRest: number;
  /** Extrapolation is the closer one on smooth stretches, the stiff method the quicker one at loose tolerances. */
  readonly nearRestBy: 'extrapolation' | 'stiff method';
  /** Where steps must end: at every kink of the slopes, or only where ports open and shut. */
  readonly stops: 'edges' | 'events';
}

/** Settled speeds agree with those of a far tighter one to 1e-5. */
export const FINE: Accuracy = {
  turning: 2e-6,
  nearRest: 1e-7,
  nearRestBy: 'extrapolation',
  stops: 'edges',
};

/** Settled speeds agree with the fine ones to 1e-3, mostly to 1e-4. A kink stepped over costs less than a stop there. */
export const QUICK: Accuracy = {
  turning: 6e-5,
  nearRest: 1e-3,
  nearRestBy: 'stiff method',
  stops: 'events',
};

/** To follow one engine from its start. */
export const FOLLOWING: Accuracy = { ...FINE, turning: 5e-5, nearRest: 2e-8 };

/** For engines whose quick turns differ too much among each other. */
export const CLOSER: Accuracy = { ...QUICK, turning: 2e-5, stops: 'edges' };

/** To find the way to a settled speed, which is then found more closely. */
export const ROUGH: Accuracy = { ...QUICK, turning: 2e-3 };

/**
 * Wide ports on small volumes make even rest stiff. A stretch for which extrapolation needs more steps than this is left to
 * the stiff method, as closely as that gets along: times agree to 1e-7.
 */
const SMOOTH_STEPS = 300;
const STIFF_NEAR_REST = 1e-6;

/** A wheel thrown back and forth by its air turns over many times the work that is left of it in the end. */
const SPEED_NEAR_REST = 1e-7;

/**
 * Where a wide port joins a small volume, its flow hangs on the last digits of two pressures that are all but equal, and a
 * kink on the way can only be followed in steps as short as the pressures take to even out. From a stretch on that needs
 * more steps than this, each step keeps the donors of the flows, which costs ordinary engines a tenth; and from one on that
 * still does, it is followed loosely. The stiffest shipped engine needs some hundreds.
 */
const CLOSE_STEPS = 1500;
const LOOSELY = 1e-3;

export interface Stepper {
  /** Crank angles in [0, 2π), ascending from 0, that no step goes over. */
  readonly stops: readonly number[];
  inAngle(y: Float64Array, toAngle: number, journey: Journey): Arrival;
  inTime(direction: Direction, y: Float64Array, toTime: number, journey: Journey): Arrival;
  readonly counters: { readonly derivativeCalls: number; readonly acceptedSteps: number };
}

/** The stiff method, as closely as asked for while it gets along. */
function byStiffMethod(
  closely: number,
  make: (relative: number, keepsDonors: boolean) => Integrator,
): Integrator {
  if (closely >= LOOSELY) return make(closely, false);
  const loosely = (): Integrator => make(LOOSELY, true);
  const keeping = (): Integrator => patientIntegrator(make(closely, true), loosely, CLOSE_STEPS);
  return patientIntegrator(make(closely, false), keeping, CLOSE_STEPS);
}

function timeIntegrator(system: EngineSystem, direction: Direction, accuracy: Accuracy): Integrator {
  const stiffly = (closely: number, ofSpeed: number): Integrator =>
    byStiffMethod(closely, (relative, keepsDonors) => {
      const problem = new TimeProblem(system, direction, keepsDonors);
      // Against time the books of the crank close as well as its speed is followed; only the air may go loosely.
      const unlessLoose = relative > closely ? closely : ofSpeed;
      return new RosenbrockIntegrator(problem, tolerances(system, unlessLoose, relative));
    });
  const { nearRest, nearRestBy } = accuracy;
  if (nearRestBy === 'stiff method') return stiffly(nearRest, nearRest);
  const problem = new TimeProblem(system, direction, false);
  const extrapolating = odexIntegrator(problem, tolerances(system, nearRest));
  return patientIntegrator(extrapolating, () => stiffly(STIFF_NEAR_REST, SPEED_NEAR_REST), SMOOTH_STEPS);
}

function angleIntegrator(system: EngineSystem, { turning }: Accuracy): Integrator {
  return byStiffMethod(turning, (relative, keepsDonors) => {
    const problem = new AngleProblem(system, keepsDonors);
    return new RosenbrockIntegrator(problem, turningTolerances(system, relative));
  });
}

/** Places on the turn nearer to each other than the inverse of this are the same [1/rad]. */
const PLACES_PER_RADIAN = 1e6;

export function engineStepper(system: EngineSystem, accuracy: Accuracy = FINE): Stepper {
  const made = new Map<string, Integrator>();
  const kept = (name: string, make: () => Integrator): Integrator => {
    const integrator = made.get(name) ?? make();
    made.set(name, integrator);
    return integrator;
  };
  const total = (key: keyof Integrator['counters']): number =>
    [...made.values()].reduce((sum, one) => sum + one.counters[key], 0);

  /** Sets the slot that went along with the independent variable to the stop itself, free of rounding. */
  const arrived = (arrival: Arrival, y: Float64Array, slot: number): Arrival => {
    if (arrival.reason === 'end') y[slot] = arrival.x;
    return arrival;
  };

  return {
    stops: accuracy.stops === 'edges' ? system.engine.edges : system.engine.events,
    inAngle: (y, toAngle, journey) => {
      // The stiff method: chest and cylinder follow each other within a degree when ports stand wide open.
      const integrator = kept('angle', () => angleIntegrator(system, accuracy));
      const from = y[SLOT.crankAngle]!;
      const likeness = Math.round(wrappedAngle(from) * PLACES_PER_RADIAN);
      const missed = missedRoomWork(system, y);
      holdEnergy(system, y);
      const arrival = integrator.advance(from, y, toAngle, turningJourney(system, { ...journey, likeness }));
      y[SLOT.speed]! -= missedRoomWork(system, y) - missed;
      holdSpeed(system, y);
      return arrived(arrival, y, SLOT.crankAngle);
    },
    inTime: (direction, y, toTime, journey) => {
      const time = kept(`time ${direction}`, () => timeIntegrator(system, direction, accuracy));
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
