/** The shape of the JSON about minutes of supply. Units are part of the keys; docs/minutes-of-supply.md explains each one. */
import type { OutcomeKind } from '../../run/outcome.ts';
import type { SupplyEnd } from '../../run/supply/timeline.ts';
import type { Caution } from '../../verdict/cautions/caution.ts';

/** Null stands for a number that is not known, or does not arise. */
type MaybeNumber = number | null;

/** What `supply.json` holds. */
export interface SupplySummary {
  /** Grows by one whenever a key is renamed, removed or changes its meaning. */
  readonly schema_version: 1;
  readonly title: string;
  readonly verdict: { readonly headline: string; readonly statements: readonly string[] };
  readonly cautions: readonly Caution[];
  /** Null for an engine that runs. */
  readonly outcome: { readonly kind: OutcomeKind; readonly reason: string } | null;
  /** Null for an engine that does not run on a full receiver. */
  readonly supply: SupplyNumbers | null;
}

export interface SupplyNumbers {
  readonly end: SupplyEnd['kind'];
  readonly wanted_time_s: MaybeNumber;
  readonly set_pressure_Pa_abs: MaybeNumber;
  readonly speed_rpm: MaybeNumber;
  readonly demand_anr_L_per_min: MaybeNumber;
  readonly delivery_anr_L_per_min: {
    readonly at_cut_out: MaybeNumber;
    readonly at_cut_in: MaybeNumber;
    readonly at_set_pressure: MaybeNumber;
  };
  readonly duty: MaybeNumber;
  readonly duty_rating: MaybeNumber;
  readonly starts_per_hour: MaybeNumber;
  readonly starts_per_hour_allowed: MaybeNumber;
  readonly period_s: MaybeNumber;
  readonly time_to_sag_s: MaybeNumber;
  readonly time_to_stop_s: MaybeNumber;
  readonly sustained_receiver_pressure_Pa_abs: MaybeNumber;
  readonly sustained_supply_pressure_Pa_abs: MaybeNumber;
  readonly sustained_speed_rpm: MaybeNumber;
  readonly stall_pressure_Pa_abs: MaybeNumber;
  readonly sufficient_free_air_L_per_min: MaybeNumber;
  readonly sufficient_receiver_m3: MaybeNumber;
  readonly receiver_for_wanted_time_m3: MaybeNumber;
  readonly receiver_for_starts_m3: MaybeNumber;
  readonly answers: readonly {
    readonly receiver_pressure_Pa_abs: MaybeNumber;
    readonly speed_rpm: MaybeNumber;
    readonly air_anr_L_per_min: MaybeNumber;
  }[];
  readonly ledger_mass_residual: MaybeNumber;
}
