/** Minutes of supply as the object that is written as JSON. */
import type { AnswerAtPressure, NoSupplyTimeline, SupplyTimeline } from '../../run/supply/timeline.ts';
import { litresPerMinute } from '../../verdict/figures.ts';
import { supplyVerdict } from '../../verdict/supply-verdict.ts';
import { numberOrNull } from './number-or-null.ts';
import type { SupplyNumbers, SupplySummary } from './supply-summary.ts';

/** The object that `supply.json` holds. */
export function supplyJson(timeline: SupplyTimeline | NoSupplyTimeline): SupplySummary {
  const { headline, statements, cautions } = supplyVerdict(timeline);
  return {
    schema_version: 1,
    title: timeline.title,
    verdict: { headline, statements },
    cautions,
    outcome: timeline.runs ? null : { kind: timeline.outcome.kind, reason: timeline.outcome.reason },
    supply: timeline.runs ? numbers(timeline) : null,
  };
}

function numbers(timeline: SupplyTimeline): SupplyNumbers {
  const { facts, deliveryAnr, end, sufficient } = timeline;
  const settled = end.kind === 'settles' ? end : undefined;
  return {
    end: end.kind,
    wanted_time_s: numberOrNull(timeline.wantedTime),
    set_pressure_Pa_abs: numberOrNull(facts.setPressure),
    speed_rpm: inRpm(timeline.speed),
    demand_anr_L_per_min: inLitres(timeline.demandAnr),
    delivery_anr_L_per_min: {
      at_cut_out: inLitres(deliveryAnr.cutOut),
      at_cut_in: inLitres(deliveryAnr.cutIn),
      at_set_pressure: inLitres(deliveryAnr.setPressure),
    },
    duty: numberOrNull(timeline.duty),
    duty_rating: numberOrNull(facts.compressor.duty_rating),
    starts_per_hour: numberOrNull(timeline.startsPerHour),
    starts_per_hour_allowed: numberOrNull(facts.compressor.starts_per_hour),
    period_s: numberOrNull(end.kind === 'cycles' ? end.period : undefined),
    time_to_sag_s: numberOrNull(timeline.timeToSag),
    time_to_stop_s: numberOrNull(end.kind === 'stops' ? end.time : undefined),
    sustained_receiver_pressure_Pa_abs: numberOrNull(settled?.pressure),
    sustained_supply_pressure_Pa_abs: numberOrNull(settled?.supplyPressure),
    sustained_speed_rpm: inRpm(settled?.speed),
    stall_pressure_Pa_abs: numberOrNull(timeline.stallPressure),
    sufficient_free_air_L_per_min: inLitres(sufficient.freeAirDelivery),
    sufficient_receiver_m3: numberOrNull(sufficient.receiver),
    receiver_for_wanted_time_m3: numberOrNull(timeline.receiverForTime),
    receiver_for_starts_m3: numberOrNull(timeline.receiverForStarts),
    answers: timeline.answers.map(answer),
    ledger_mass_residual: numberOrNull(timeline.ledgerResidual),
  };
}

const answer = ({ pressure, speed, airFlowAnr }: AnswerAtPressure): SupplyNumbers['answers'][number] => ({
  receiver_pressure_Pa_abs: numberOrNull(pressure),
  speed_rpm: inRpm(speed),
  air_anr_L_per_min: inLitres(airFlowAnr),
});

const inRpm = (speed: number | undefined): number | null =>
  numberOrNull(speed === undefined ? undefined : (speed * 30) / Math.PI);

const inLitres = (flow: number): number | null => numberOrNull(litresPerMinute(flow));
