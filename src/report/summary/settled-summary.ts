/** The settled cycle as JSON. */
import type { AirLedger, PlaceExtremes, SettledCycle, WorkLedger } from '../../run/result.ts';
import { cubicFeetPerMinute, litresPerMinute } from '../../verdict/figures.ts';
import { numberOrNull } from './number-or-null.ts';
import type { SettledSummary } from './summary.ts';

export function settledSummary(cycle: SettledCycle): SettledSummary {
  return {
    speed_rpm: numberOrNull((cycle.speed * 30) / Math.PI),
    period_s: numberOrNull(cycle.period),
    speed_fluctuation: numberOrNull(cycle.speedFluctuation),
    indicated_work_J: numberOrNull(cycle.work.indicated),
    brake_work_J: numberOrNull(cycle.work.load),
    imep_Pa: numberOrNull(cycle.indicatedMeanEffectivePressure),
    bmep_Pa: numberOrNull(cycle.brakeMeanEffectivePressure),
    brake_power_W: numberOrNull(cycle.brakePower),
    air_anr_L_per_min: numberOrNull(litresPerMinute(cycle.airFlowAnr)),
    air_cfm: numberOrNull(cubicFeetPerMinute(cycle.airFlowAnr)),
    ...airShares(cycle.air),
    work_ledger: workSummary(cycle.work),
    extremes: cycle.extremes.map(extremesSummary),
    coldest_exhaust_K: numberOrNull(cycle.coldestExhaust),
  };
}

function airShares(air: AirLedger) {
  return {
    air_per_cycle_kg: numberOrNull(air.mass),
    worked_share: numberOrNull(air.workedShare),
    leak_share: numberOrNull(air.leakShare),
    blow_through_share: numberOrNull(air.blowThroughShare),
    clearance_share: numberOrNull(air.clearanceShare),
    leaks: air.leaks.map(({ name, share }) => ({ name, share: numberOrNull(share) })),
  };
}

function workSummary(work: WorkLedger): SettledSummary['work_ledger'] {
  return {
    bearings_J: numberOrNull(work.bearings),
    piston_J: numberOrNull(work.piston),
    valve_gear_J: numberOrNull(work.valveGear),
    load_J: numberOrNull(work.load),
    kinetic_gain_J: numberOrNull(work.kineticGain),
    wall_heat_J: numberOrNull(work.wallHeat),
  };
}

function extremesSummary({
  place,
  pressure,
  temperature,
}: PlaceExtremes): SettledSummary['extremes'][number] {
  return {
    place,
    min_pressure_Pa_abs: numberOrNull(pressure.min),
    max_pressure_Pa_abs: numberOrNull(pressure.max),
    min_temperature_K: numberOrNull(temperature.min),
    max_temperature_K: numberOrNull(temperature.max),
  };
}
