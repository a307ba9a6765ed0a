/** Follows one whole turn from top dead centre and takes its measure. */
import { SLOT } from '../model/slots.ts';
import { ledgerResiduals, resetTotals, type Residuals } from '../model/ledger.ts';
import { FIRST_VOLUME, type WorkingEnd } from '../model/engine.ts';
import type { EngineSystem } from '../model/system.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { Arrival } from '../numerics/integrator.ts';
import type { CycleProfile, EndProfile } from './result.ts';
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
  /** For each working end, its state as its admission opens and as it shuts. */
  readonly ends: readonly { readonly atAdmission: EventState; readonly atCutOff: EventState }[];
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

function endProfile(end: WorkingEnd, column: () => Float64Array): EndProfile {
  return {
    name: end.name,
    deadCentre: end.deadCentre,
    sweptVolume: end.sweptVolume,
    clearanceVolume: end.clearanceVolume,
    volume: column(),
    pressure: column(),
    temperature: column(),
    admissionArea: column(),
    exhaustArea: column(),
  };
}

function profileOf(
  system: EngineSystem,
  start: Float64Array,
  samples: readonly Float64Array[],
): CycleProfile {
  const { engine } = system;
  const [first, ...others] = engine.ends;
  const column = (): Float64Array => new Float64Array(samples.length);
  const profile: CycleProfile = {
    crankAngle: column(),
    time: column(),
    speed: column(),
    chestPressure: column(),
    chestTemperature: column(),
    ends: [endProfile(first, column), ...others.map((end) => endProfile(end, column))],
    gasTorque: column(),
    inertiaTorque: column(),
    frictionTorque: column(),
    loadTorque: column(),
    massFlow: engine.passages.map(column),
  };
  for (const [i, y] of samples.entries()) writeSample(system, profile, start, i, y);
  return profile;
}

function writeSample(
  system: EngineSystem,
  profile: CycleProfile,
  start: Float64Array,
  i: number,
  y: Float64Array,
): void {
  const { engine } = system;
  const angle = y[SLOT.crankAngle]!;
  const speed = y[SLOT.speed]!;
  const now = system.observe(y);
  profile.crankAngle[i] = angle - start[SLOT.crankAngle]!;
  profile.time[i] = y[SLOT.time]! - start[SLOT.time]!;
  profile.speed[i] = speed;
  profile.chestPressure[i] = now.pressure[engine.chest]!;
  profile.chestTemperature[i] = now.temperature[engine.chest]!;
  for (const [k, own] of profile.ends.entries()) {
    const end = engine.ends[k]!;
    own.volume[i] = now.endVolume[k]!;
    own.pressure[i] = now.pressure[end.place]!;
    own.temperature[i] = now.temperature[end.place]!;
    own.admissionArea[i] = end.admission.effectiveArea(angle - end.deadCentre, speed);
    own.exhaustArea[i] = end.exhaust.effectiveArea(angle - end.deadCentre, speed);
  }
  profile.gasTorque[i] = now.gasTorque;
  profile.inertiaTorque[i] = now.inertiaTorque + now.gravityTorque;
  profile.frictionTorque[i] = now.bearingTorque + now.pistonTorque + now.gearTorque;
  profile.loadTorque[i] = now.loadTorque;
  for (const [k, flows] of profile.massFlow.entries()) flows[i] = now.massFlow[k]!;
}

/** The state of an end at the edge nearest to one of its valve events; events are edges by the gear's contract. */
function eventState(system: EngineSystem, turn: Turn, end: WorkingEnd, event: number): EventState {
  const wanted = wrappedAngle(event + end.deadCentre);
  const distance = (edge: number): number => Math.abs(Math.sin((edge - wanted) / 2));
  const nearest = [...turn.atEdges.keys()].reduce((best, edge) =>
    distance(edge) < distance(best) ? edge : best,
  );
  const y = turn.atEdges.get(nearest)!;
  const volume = system.observe(y).endVolume[system.engine.ends.indexOf(end)]!;
  return { mass: y[system.slots.mass(end.place - FIRST_VOLUME)]!, volume };
}

/** Measures the turn that begins at `start`, a state at top dead centre that turns forward. */
export function measureCycle(
  system: EngineSystem,
  stepper: Stepper,
  start: Float64Array,
): MeasuredCycle | Arrival {
  const before = start.slice();
  resetTotals(system, before);
  const turn = followTurn(system, stepper, before);
  if ('reason' in turn) return turn;
  return {
    before,
    after: turn.after,
    profile: profileOf(system, before, turn.atDegrees),
    residuals: ledgerResiduals(system, before, turn.after),
    passageMass: system.engine.passages.map((_, i) => turn.after[system.slots.passageMass(i)]!),
    ends: system.engine.ends.map((end) => {
      const { admission, cutOff } = end.valveGear.events;
      return {
        atAdmission: eventState(system, turn, end, admission),
        atCutOff: eventState(system, turn, end, cutOff),
      };
    }),
  };
}
