/** What can be read off a settled cycle and its valve events; shared by the verdict and by the report's pictures. */
import { log } from '../numerics/elementary/logarithm.ts';
import { pow } from '../numerics/elementary/power.ts';
import type { ValveEvents } from '../parts/valve-gears/valve-gear.ts';
import type { CycleProfile, EngineFacts, SettledCycle } from '../run/result.ts';

const TURN = 2 * Math.PI;

/** How far the crank turns from one angle to another in the running direction [rad, 0 to 2π). */
export function turnedBetween(from: number, to: number): number {
  return (((to - from) % TURN) + TURN) % TURN;
}

/** Whether an angle lies in the part of the turn that begins at `from` and ends at `to`. */
export function liesBetween(angle: number, from: number, to: number): boolean {
  return turnedBetween(from, angle) < turnedBetween(from, to);
}

export function admissionOpen(events: ValveEvents, angle: number): boolean {
  return liesBetween(angle, events.admission, events.cutOff);
}

export function exhaustOpen(events: ValveEvents, angle: number): boolean {
  return liesBetween(angle, events.release, events.compression);
}

/** Crank angle [rad] during which admission and exhaust stand open together. */
export function openTogether({ admission, cutOff, release, compression }: ValveEvents): number {
  const late = liesBetween(admission, release, compression) ? turnedBetween(admission, compression) : 0;
  const early = liesBetween(release, admission, cutOff) ? turnedBetween(release, cutOff) : 0;
  return late + early;
}

/** A column of a settled turn at any crank angle, between its whole degrees by a straight line. */
export function valueAt(values: Float64Array, angle: number): number {
  const place = (turnedBetween(0, angle) / TURN) * (values.length - 1);
  const before = Math.floor(place);
  const low = values[before] ?? NaN;
  const high = values[before + 1] ?? low;
  return low + (high - low) * (place - before);
}

/** Mean of f(i) over the rows of a profile whose crank angle lies between two angles. */
export function meanBetween(
  profile: CycleProfile,
  from: number,
  to: number,
  value: (profile: CycleProfile, row: number) => number,
): number {
  let sum = 0;
  let count = 0;
  for (let row = 0; row + 1 < profile.crankAngle.length; row += 1) {
    if (!liesBetween(profile.crankAngle[row] ?? NaN, from, to)) continue;
    sum += value(profile, row);
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}

/** Pressure in the cylinder's first end [Pa absolute] at the moment its exhaust opens. */
export function releasePressure(cycle: SettledCycle): number {
  return valueAt(cycle.profile.ends[0].pressure, cycle.events.release);
}

/** Supply pressure above the atmosphere [Pa]: what there is to work with. */
export function workingPressure(engine: EngineFacts): number {
  return engine.supplyPressure - engine.atmosphericPressure;
}

/**
 * Work of the loss-free diagram [J]: supply pressure up to cut-off, expansion p·V^γ = const without heat to the end
 * of the stroke, exhaust against the atmosphere. The clearance is filled, but costs no work.
 */
export function lossFreeWork(engine: EngineFacts): number {
  const exponent = engine.gas.heatCapacityRatio - 1;
  const admitted = engine.cutOffFraction * engine.sweptVolume;
  const atCutOff = engine.clearanceVolume + admitted;
  const atEnd = engine.clearanceVolume + engine.sweptVolume;
  const expansion = ((engine.supplyPressure * atCutOff) / exponent) * (1 - pow(atCutOff / atEnd, exponent));
  return engine.supplyPressure * admitted + expansion - engine.atmosphericPressure * engine.sweptVolume;
}

/** Reference air, ISO 8778 [Pa, K]. */
const ANR = { pressure: 100e3, temperature: 293.15 } as const;

/**
 * The most that any engine could make of the air of one turn [J]: slow expansion from the supply to the room at the
 * temperature of the room, m R T₀ ln(p_s/p₀), with m R T₀ = p V of the same air as ANR, brought to T₀. Second law; any text
 * of engineering thermodynamics under the availability of compressed air. The supply is taken to be as warm as the room.
 */
export function availableWork({ airFlowAnr, period }: SettledCycle, engine: EngineFacts): number {
  const volume = airFlowAnr * period * (engine.atmosphericTemperature / ANR.temperature);
  return ANR.pressure * volume * log(engine.supplyPressure / engine.atmosphericPressure);
}
