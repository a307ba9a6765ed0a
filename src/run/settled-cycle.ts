/** From the measure of one turn to what a builder asks: speed, work, air, where it went. */
import { referenceVolumeFlow } from '../gas/reference-atmosphere.ts';
import { fromSupply } from '../model/from-supply.ts';
import { kineticEnergy } from '../model/ledger.ts';
import { ATMOSPHERE, FIRST_VOLUME, SUPPLY } from '../model/engine.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { strokeFraction } from '../parts/crank-train.ts';
import type { MeasuredCycle } from './cycle.ts';
import type { MeasuredTurn } from './measured-turn.ts';
import type {
  AirLedger,
  CycleProfile,
  PlaceExtremes,
  Range,
  SettledCycle,
  SettledTurn,
  WorkLedger,
} from './result.ts';

function rangeOf(column: Float64Array): Range {
  return { min: column.reduce((a, b) => Math.min(a, b)), max: column.reduce((a, b) => Math.max(a, b)) };
}

function extremesOf(profile: CycleProfile): readonly PlaceExtremes[] {
  const chest = {
    place: 'valve chest',
    pressure: rangeOf(profile.chestPressure),
    temperature: rangeOf(profile.chestTemperature),
  };
  const ends = profile.ends.map(({ name, pressure, temperature }) => ({
    place: name,
    pressure: rangeOf(pressure),
    temperature: rangeOf(temperature),
  }));
  return [chest, ...ends];
}

function workLedger(system: EngineSystem, { before, after }: MeasuredTurn): WorkLedger {
  const { slots } = system;
  return {
    indicated: after[slots.gasWork]!,
    bearings: after[slots.bearingWork]!,
    piston: after[slots.pistonWork]!,
    valveGear: after[slots.gearWork]!,
    load: after[slots.loadWork]!,
    kineticGain: kineticEnergy(system, after) - kineticEnergy(system, before),
    wallHeat: after[slots.wallHeat]!,
  };
}

/**
 * Where the air went, by this order of claims: leaked to the room, or past a shut admission valve straight out of the
 * open exhaust; blown straight through both open ports; filled the clearance at cut-off pressure beyond what was left
 * in it; the rest pushed the pistons.
 */
function airLedger(system: EngineSystem, cycle: MeasuredTurn): AirLedger {
  const { engine, slots } = system;
  const { passages } = engine;
  const total = (i: number): number => cycle.passageMass[i]!;
  const mass = fromSupply(engine, cycle.passageMass);
  const share = (amount: number): number => (mass > 0 ? Math.max(0, amount) / mass : 0);
  const intoEnds = new Set(engine.ends.flatMap((end) => end.leaksIn));
  const leaks = passages.flatMap(({ name, role }, i) => {
    if (role !== 'leak') return [];
    // Air that leaks into a cylinder end is lost only as far as it leaves unused.
    const lost = intoEnds.has(i) ? cycle.after[slots.passageWaste(i)]! : total(i);
    return [{ name, share: share(lost) }];
  });
  const leakShare = Math.min(
    1,
    leaks.reduce((sum, leak) => sum + leak.share, 0),
  );
  const blowThroughShare = Math.min(1 - leakShare, share(cycle.after[slots.blowThrough]!));
  const clearanceFill = engine.ends.reduce((sum, { clearanceVolume }, i) => {
    const { atAdmission, atCutOff } = cycle.ends[i]!;
    return sum + Math.max(0, (clearanceVolume * atCutOff.mass) / atCutOff.volume - atAdmission.mass);
  }, 0);
  const clearanceShare = Math.min(1 - leakShare - blowThroughShare, share(clearanceFill));
  const workedShare = Math.max(0, 1 - leakShare - blowThroughShare - clearanceShare);
  return { mass, workedShare, leakShare, blowThroughShare, clearanceShare, leaks };
}

/** Lowest temperature of the air while it leaves by an exhaust port [K]. */
function coldestExhaust({ engine }: EngineSystem, { ends, massFlow }: CycleProfile): number {
  let coldest = Infinity;
  for (const [k, { exhaustPassage }] of engine.ends.entries()) {
    for (const [i, flow] of massFlow[exhaustPassage]!.entries()) {
      if (flow > 0) coldest = Math.min(coldest, ends[k]!.temperature[i]!);
    }
  }
  return Number.isFinite(coldest) ? coldest : engine.atmosphere.temperature;
}

/** What to call a place number. */
function placeName({ engine }: EngineSystem, place: number): string {
  if (place === SUPPLY) return 'supply';
  return place === ATMOSPHERE ? 'room' : engine.volumes[place - FIRST_VOLUME]!.name;
}

export function settledTurn(system: EngineSystem, turn: MeasuredTurn): SettledTurn {
  const { engine } = system;
  const period = turn.after[SLOT.time]! - turn.before[SLOT.time]!;
  const work = workLedger(system, turn);
  const air = airLedger(system, turn);
  const airMassFlow = air.mass / period;
  const { events } = engine.ends[0].valveGear;
  return {
    speed: (2 * Math.PI) / period,
    period,
    sweptVolume: engine.sweptVolume,
    work,
    indicatedMeanEffectivePressure: work.indicated / engine.sweptVolume,
    brakeMeanEffectivePressure: work.load / engine.sweptVolume,
    brakePower: work.load / period,
    airMassFlow,
    airFlowAnr: referenceVolumeFlow(engine.gas, airMassFlow),
    air,
    passages: engine.passages.map(({ name, role, from, to }, i) => ({
      name,
      role,
      from: placeName(system, from),
      to: placeName(system, to),
      mass: turn.passageMass[i]!,
    })),
    events,
    cutOffFraction: strokeFraction(engine.crank, events.cutOff),
  };
}

export function settledCycle(system: EngineSystem, cycle: MeasuredCycle): SettledCycle {
  const { profile } = cycle;
  const turn = settledTurn(system, cycle);
  const speeds = rangeOf(profile.speed);
  return {
    ...turn,
    speedFluctuation: (speeds.max - speeds.min) / turn.speed,
    extremes: extremesOf(profile),
    coldestExhaust: coldestExhaust(system, profile),
    profile,
  };
}
