/** From the measure of one turn to what a builder asks: speed, work, air, where it went. */
import { anrVolumeFlow } from '../gas/reference-atmosphere.ts';
import { kineticEnergy } from '../model/ledger.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { strokeFraction } from '../parts/crank-train.ts';
import type { MeasuredCycle } from './cycle.ts';
import type {
  AirLedger,
  CycleProfile,
  PassageTotal,
  PlaceExtremes,
  Range,
  SettledCycle,
  WorkLedger,
} from './result.ts';

function rangeOf(column: Float64Array): Range {
  return { min: column.reduce((a, b) => Math.min(a, b)), max: column.reduce((a, b) => Math.max(a, b)) };
}

function extremesOf(profile: CycleProfile): readonly PlaceExtremes[] {
  return [
    {
      place: 'chest',
      pressure: rangeOf(profile.chestPressure),
      temperature: rangeOf(profile.chestTemperature),
    },
    {
      place: 'cylinder',
      pressure: rangeOf(profile.cylinderPressure),
      temperature: rangeOf(profile.cylinderTemperature),
    },
  ];
}

function workLedger(system: EngineSystem, { before, after }: MeasuredCycle): WorkLedger {
  return {
    indicated: after[SLOT.gasWork]!,
    bearings: after[SLOT.bearingWork]!,
    piston: after[SLOT.pistonWork]!,
    valveGear: after[SLOT.gearWork]!,
    load: after[SLOT.loadWork]!,
    kineticGain: kineticEnergy(system, after) - kineticEnergy(system, before),
    wallHeat: after[SLOT.wallHeat]!,
  };
}

/**
 * Where the air went, by this order of claims: leaked to the room, or past a shut admission valve straight out of the
 * open exhaust; blown straight through both open ports; filled the clearance at cut-off pressure beyond what was left
 * in it; the rest pushed the piston.
 */
function airLedger(system: EngineSystem, cycle: MeasuredCycle, passages: readonly PassageTotal[]): AirLedger {
  const mass = passages.find(({ role }) => role === 'supply')?.mass ?? 0;
  const share = (amount: number): number => (mass > 0 ? Math.max(0, amount) / mass : 0);
  const inwards = passages.filter(({ role, to }) => role === 'leak' && to === 'cylinder');
  const inwardMass = inwards.reduce((sum, passage) => sum + Math.max(0, passage.mass), 0);
  const leakThrough = cycle.after[SLOT.leakThrough]!;
  const leaks = passages
    .filter(({ role }) => role === 'leak')
    .map((passage) => {
      const own = passage.to === 'cylinder' && inwardMass > 0 ? leakThrough / inwardMass : 1;
      return { name: passage.name, share: share(own * passage.mass) };
    });
  const leakShare = Math.min(
    1,
    leaks.reduce((sum, leak) => sum + leak.share, 0),
  );
  const blowThroughShare = Math.min(1 - leakShare, share(cycle.after[SLOT.blowThrough]!));
  const { atAdmission, atCutOff } = cycle;
  const clearanceFill = (system.engine.clearanceVolume * atCutOff.mass) / atCutOff.volume - atAdmission.mass;
  const clearanceShare = Math.min(1 - leakShare - blowThroughShare, share(clearanceFill));
  const workedShare = Math.max(0, 1 - leakShare - blowThroughShare - clearanceShare);
  return { mass, workedShare, leakShare, blowThroughShare, clearanceShare, leaks };
}

/** Lowest temperature of the air while it leaves by the exhaust port [K]. */
function coldestExhaust(profile: CycleProfile, exhaustFlow: Float64Array): number {
  let coldest = Infinity;
  for (const [i, flow] of exhaustFlow.entries()) {
    if (flow > 0) coldest = Math.min(coldest, profile.cylinderTemperature[i]!);
  }
  return Number.isFinite(coldest) ? coldest : rangeOf(profile.cylinderTemperature).min;
}

export function settledCycle(system: EngineSystem, cycle: MeasuredCycle): SettledCycle {
  const { engine } = system;
  const { profile } = cycle;
  const period = cycle.after[SLOT.time]! - cycle.before[SLOT.time]!;
  const speed = (2 * Math.PI) / period;
  const passages = engine.passages.map(({ name, role, from, to }, i) => ({
    name,
    role,
    from,
    to,
    mass: cycle.passageMass[i]!,
  }));
  const work = workLedger(system, cycle);
  const air = airLedger(system, cycle, passages);
  const airMassFlow = air.mass / period;
  const speeds = rangeOf(profile.speed);
  return {
    speed,
    period,
    sweptVolume: engine.sweptVolume,
    work,
    indicatedMeanEffectivePressure: work.indicated / engine.sweptVolume,
    brakeMeanEffectivePressure: work.load / engine.sweptVolume,
    brakePower: work.load / period,
    airMassFlow,
    airFlowAnr: anrVolumeFlow(airMassFlow),
    air,
    passages,
    speedFluctuation: (speeds.max - speeds.min) / speed,
    extremes: extremesOf(profile),
    coldestExhaust: coldestExhaust(profile, profile.massFlow[engine.passages.indexOf(engine.exhaust)]!),
    events: engine.valveGear.events,
    cutOffFraction: strokeFraction(engine.crank, engine.valveGear.events.cutOff),
    profile,
  };
}
