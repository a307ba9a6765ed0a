/** Follows one whole turn from top dead centre, takes its measure, and samples it for pictures. */
import { SLOT } from '../model/slots.ts';
import type { WorkingEnd } from '../model/engine.ts';
import type { EngineSystem } from '../model/system.ts';
import type { AcceptedStep } from '../numerics/integrator.ts';
import { measureTurn, type MeasuredTurn } from './measured-turn.ts';
import type { TurnFailure } from './one-turn.ts';
import type { CycleProfile, EndProfile } from './result.ts';
import type { Stepper } from './stepper.ts';

const DEGREES = 360;
const RADIANS_PER_DEGREE = Math.PI / 180;

export interface MeasuredCycle extends MeasuredTurn {
  readonly profile: CycleProfile;
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

/** Measures the turn that begins at `start`, a state at top dead centre that turns forward. */
export function measureCycle(
  system: EngineSystem,
  stepper: Stepper,
  start: Float64Array,
): MeasuredCycle | TurnFailure {
  const origin = start[SLOT.crankAngle]!;
  const samples: Float64Array[] = [start.slice()];
  const onStep = (step: AcceptedStep): void => {
    while (samples.length < DEGREES && origin + samples.length * RADIANS_PER_DEGREE <= step.to) {
      const sample = new Float64Array(system.dimension);
      const angle = origin + samples.length * RADIANS_PER_DEGREE;
      step.interpolate(angle, sample);
      sample[SLOT.crankAngle] = angle;
      samples.push(sample);
    }
  };
  const turn = measureTurn(system, stepper, start, { onStep });
  if ('reason' in turn) return turn;
  return { ...turn, profile: profileOf(system, turn.before, [...samples, turn.after]) };
}
