/** Follows one whole turn from top dead centre and takes its measure. */
import { passageMassSlot, SLOT } from '../model/slots.ts';
import { ledgerResiduals, resetTotals, type Residuals } from '../model/ledger.ts';
import { CHEST, CYLINDER, type EngineSystem } from '../model/system.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { Arrival } from '../numerics/integrator.ts';
import type { CycleProfile } from './result.ts';
import type { Stepper } from './stepper.ts';

const DEGREES = 360;
const RADIANS_PER_DEGREE = Math.PI / 180;

/** State of the cylinder at a valve event. */
export interface EventState {
  readonly mass: number;
  readonly volume: number;
}

export interface MeasuredCycle {
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly profile: CycleProfile;
  readonly residuals: Residuals;
  /** Net mass [kg] through each passage. */
  readonly passageMass: readonly number[];
  readonly atAdmission: EventState;
  readonly atCutOff: EventState;
}

/** Copies of the state at every whole degree and at every edge of one turn; undefined when the engine gave up on it. */
interface Turn {
  readonly atDegrees: readonly Float64Array[];
  readonly atEdges: ReadonlyMap<number, Float64Array>;
  readonly after: Float64Array;
}

function followTurn(system: EngineSystem, stepper: Stepper, start: Float64Array): Turn | Arrival {
  const y = start.slice();
  const origin = y[SLOT.crankAngle]!;
  const atDegrees: Float64Array[] = [y.slice()];
  const atEdges = new Map<number, Float64Array>([[0, y.slice()]]);
  const stops = [...system.engine.edges.filter((edge) => edge > 0), 2 * Math.PI];
  for (const stop of stops) {
    const arrival = stepper.inAngle(y, origin + stop, {
      stepLimit: 200_000,
      onStep: (step) => {
        while (atDegrees.length < DEGREES && origin + atDegrees.length * RADIANS_PER_DEGREE <= step.to) {
          const sample = new Float64Array(system.dimension);
          const angle = origin + atDegrees.length * RADIANS_PER_DEGREE;
          step.interpolate(angle, sample);
          sample[SLOT.crankAngle] = angle;
          atDegrees.push(sample);
        }
      },
    });
    if (arrival.reason !== 'end') return arrival;
    atEdges.set(stop, y.slice());
  }
  atDegrees.push(y.slice());
  return { atDegrees, atEdges, after: y };
}

function profileOf(
  system: EngineSystem,
  start: Float64Array,
  samples: readonly Float64Array[],
): CycleProfile {
  const { engine } = system;
  const column = (): Float64Array => new Float64Array(samples.length);
  const profile = {
    crankAngle: column(),
    time: column(),
    speed: column(),
    cylinderVolume: column(),
    cylinderPressure: column(),
    cylinderTemperature: column(),
    chestPressure: column(),
    chestTemperature: column(),
    admissionArea: column(),
    exhaustArea: column(),
    gasTorque: column(),
    inertiaTorque: column(),
    frictionTorque: column(),
    loadTorque: column(),
    massFlow: engine.passages.map(column),
  };
  for (const [i, y] of samples.entries()) {
    const angle = y[SLOT.crankAngle]!;
    const now = system.observe(y);
    profile.crankAngle[i] = angle - start[SLOT.crankAngle]!;
    profile.time[i] = y[SLOT.time]! - start[SLOT.time]!;
    profile.speed[i] = y[SLOT.speed]!;
    profile.cylinderVolume[i] = now.cylinderVolume;
    profile.cylinderPressure[i] = now.pressure[CYLINDER]!;
    profile.cylinderTemperature[i] = now.temperature[CYLINDER]!;
    profile.chestPressure[i] = now.pressure[CHEST]!;
    profile.chestTemperature[i] = now.temperature[CHEST]!;
    profile.admissionArea[i] = engine.admission.effectiveArea(angle);
    profile.exhaustArea[i] = engine.exhaust.effectiveArea(angle);
    profile.gasTorque[i] = now.gasTorque;
    profile.inertiaTorque[i] = now.inertiaTorque;
    profile.frictionTorque[i] = now.bearingTorque + now.pistonTorque + now.gearTorque;
    profile.loadTorque[i] = now.loadTorque;
    for (const [k, flows] of profile.massFlow.entries()) flows[i] = now.massFlow[k]!;
  }
  return profile;
}

/** The state at the edge nearest to a valve event; events are edges by the gear's contract. */
function eventState(system: EngineSystem, turn: Turn, event: number): EventState {
  const wanted = wrappedAngle(event);
  const nearest = [...turn.atEdges.keys()].reduce((best, edge) =>
    Math.abs(edge - wanted) < Math.abs(best - wanted) ? edge : best,
  );
  const y = turn.atEdges.get(nearest)!;
  return { mass: y[SLOT.cylinderMass]!, volume: system.observe(y).cylinderVolume };
}

/** Measures the turn that begins at `start`, a state at top dead centre that turns forward. */
export function measureCycle(
  system: EngineSystem,
  stepper: Stepper,
  start: Float64Array,
): MeasuredCycle | Arrival {
  const before = start.slice();
  resetTotals(before);
  const turn = followTurn(system, stepper, before);
  if ('reason' in turn) return turn;
  const { admission, cutOff } = system.engine.valveGear.events;
  return {
    before,
    after: turn.after,
    profile: profileOf(system, before, turn.atDegrees),
    residuals: ledgerResiduals(system, before, turn.after),
    passageMass: system.engine.passages.map((_, i) => turn.after[passageMassSlot(i)]!),
    atAdmission: eventState(system, turn, admission),
    atCutOff: eventState(system, turn, cutOff),
  };
}
