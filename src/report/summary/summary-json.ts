/** A result as the object that is written as JSON. */
import type { CompressorVerdict } from '../../run/compressor-verdict.ts';
import type { EngineFacts, Moisture, RunResult, StandStill } from '../../run/result.ts';
import { degrees, gramsPerHour, litresPerMinute } from '../../verdict/figures.ts';
import { verdictOf } from '../../verdict/verdict.ts';
import { driveSummary } from './drive-summary.ts';
import { numberOrNull } from './number-or-null.ts';
import { settledSummary } from './settled-summary.ts';
import { trialsSummary } from './trials-summary.ts';
import type {
  CompressorSummary,
  EngineSummary,
  MoistureSummary,
  StandStillSummary,
  Summary,
} from './summary.ts';

/** The summary of a run for other programs. Sentences in it are metric; whatever is not known is null, never NaN. */
export function summaryJson(result: RunResult): Summary {
  const { settled, compressor, moisture, ledger, counters } = result;
  const { headline, statements, nextChange, cautions } = verdictOf(result, 'metric');
  return {
    schema_version: 1,
    title: result.title,
    outcome: outcomeSummary(result),
    verdict: { headline, statements, next_change: nextChange },
    cautions,
    engine: engineSummary(result.engine),
    settled: settled === undefined ? null : settledSummary(settled),
    drive: result.drive === undefined ? null : driveSummary(result.drive),
    trials: result.trials === undefined ? null : trialsSummary(result.trials),
    stand_still: result.standStill === undefined ? null : standStillSummary(result.standStill),
    compressor: compressor === undefined ? null : compressorSummary(compressor),
    moisture: moisture === undefined ? null : moistureSummary(moisture),
    ledger: { mass_residual: numberOrNull(ledger.mass), energy_residual: numberOrNull(ledger.energy) },
    counters: {
      derivative_calls: counters.derivativeCalls,
      accepted_steps: counters.acceptedSteps,
      turns: counters.turns,
    },
  };
}

function outcomeSummary({ outcome }: RunResult): Summary['outcome'] {
  return {
    kind: outcome.kind,
    reason: outcome.reason,
    time_s: numberOrNull(outcome.time),
    crank_angle_deg: numberOrNull(degrees(outcome.crankAngle)),
    turns: outcome.turns,
    missing_torque_N_m: numberOrNull(outcome.missingTorque),
  };
}

function engineSummary(engine: EngineFacts): EngineSummary {
  return {
    valve_gear: engine.valveGearKind,
    running_direction: engine.reverse === undefined ? 'forward' : 'reverse',
    gas: engine.gas.name,
    supply_pressure_Pa_abs: numberOrNull(engine.supplyPressure),
    atmospheric_pressure_Pa_abs: numberOrNull(engine.atmosphericPressure),
    swept_volume_m3: numberOrNull(engine.sweptVolume),
    clearance_volume_m3: numberOrNull(engine.clearanceVolume),
    events: {
      admission_deg: numberOrNull(degrees(engine.events.admission)),
      cut_off_deg: numberOrNull(degrees(engine.events.cutOff)),
      release_deg: numberOrNull(degrees(engine.events.release)),
      compression_deg: numberOrNull(degrees(engine.events.compression)),
      cut_off_percent_of_stroke: numberOrNull(100 * engine.cutOffFraction),
    },
    derived_sizes: engine.derivedSizes.map(({ label, value, dimension }) => ({
      label,
      value_SI: numberOrNull(value),
      dimension,
    })),
  };
}

function compressorSummary(compressor: CompressorVerdict): CompressorSummary {
  return {
    demand_anr_L_per_min: numberOrNull(litresPerMinute(compressor.demandAnr)),
    delivery_anr_L_per_min: numberOrNull(litresPerMinute(compressor.deliveryAnr)),
    duty: numberOrNull(compressor.duty),
    duty_rating: numberOrNull(compressor.dutyRating),
    keeps_up: compressor.keepsUp,
    minutes_until_sag: numberOrNull(compressor.minutesUntilSag),
  };
}

function moistureSummary(moisture: Moisture): MoistureSummary {
  return {
    water_taken_in_g_per_h: numberOrNull(gramsPerHour(moisture.takenIn)),
    water_condensed_g_per_h: numberOrNull(gramsPerHour(moisture.condensed)),
    water_carried_on_g_per_h: numberOrNull(gramsPerHour(moisture.carriedOn)),
    receiver_pressure_Pa_abs: numberOrNull(moisture.receiverPressure),
    room_dew_point_K: numberOrNull(moisture.roomDewPoint),
    pressure_dew_point_K: numberOrNull(moisture.pressureDewPoint),
    exhaust_dew_point_K: numberOrNull(moisture.exhaustDewPoint),
  };
}

function standStillSummary({
  chestPressure,
  cylinderPressure,
  airFlowAnr,
  leaks,
}: StandStill): StandStillSummary {
  return {
    chest_pressure_Pa_abs: numberOrNull(chestPressure),
    cylinder_pressure_Pa_abs: numberOrNull(cylinderPressure),
    air_anr_L_per_min: numberOrNull(litresPerMinute(airFlowAnr)),
    leaks: leaks.map(({ name, massFlow }) => ({ name, mass_flow_kg_per_s: numberOrNull(massFlow) })),
  };
}
