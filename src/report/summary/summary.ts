/** The shape of the JSON that other programs read. Units are part of the keys; docs/json-output.md explains each one. */
import type { Dimension } from '../../kinds/parameter.ts';
import type { OutcomeKind } from '../../run/outcome.ts';
import type { Caution } from '../../verdict/cautions/caution.ts';

/** Null stands for a number that is not known. */
type MaybeNumber = number | null;

/** What `summary.json` holds. */
export interface Summary {
  /** Grows by one whenever a key is renamed, removed or changes its meaning. */
  readonly schema_version: 1;
  readonly title: string;
  readonly outcome: {
    readonly kind: OutcomeKind;
    readonly reason: string;
    readonly time_s: MaybeNumber;
    readonly crank_angle_deg: MaybeNumber;
    readonly turns: number;
    readonly missing_torque_N_m: MaybeNumber;
  };
  readonly verdict: {
    readonly headline: string;
    readonly statements: readonly string[];
    readonly next_change: string;
  };
  readonly cautions: readonly Caution[];
  readonly engine: EngineSummary;
  /** Null for an engine that has not settled. */
  readonly settled: SettledSummary | null;
  /** Null when it was not asked for. */
  readonly drive: DriveSummary | null;
  /** Null for an engine that runs, and where nothing was tried. */
  readonly trials: TrialsSummary | null;
  /** Null unless the engine came to rest. */
  readonly stand_still: StandStillSummary | null;
  /** Null when no compressor was described or the engine has not settled. */
  readonly compressor: CompressorSummary | null;
  /** Null unless the engine has settled on air from the room. */
  readonly moisture: MoistureSummary | null;
  readonly ledger: { readonly mass_residual: MaybeNumber; readonly energy_residual: MaybeNumber };
  readonly counters: {
    readonly derivative_calls: number;
    readonly accepted_steps: number;
    readonly turns: number;
  };
}

export interface DriveSummary {
  readonly stall_torque_N_m: MaybeNumber;
  readonly operating_points: readonly { readonly speed_rpm: MaybeNumber; readonly stable: boolean }[];
  readonly starts: StartsSummary;
  /** Null for a gear that serves one way only. */
  readonly starts_reversed: StartsSummary | null;
}

export interface StartsSummary {
  readonly positions: number;
  readonly unaided_share: MaybeNumber;
  /** Positions from which a push is needed and catches, and the hardest push among them. */
  readonly pushed: number;
  readonly hardest_push_rpm: MaybeNumber;
}

/** A change that was tried on an engine that does not run. */
export interface ChangeSummary {
  readonly what: string;
  readonly settings: readonly { readonly path: string; readonly now: string; readonly then: string }[];
}

export interface TrialsSummary {
  /** Null when no change was found with which it runs. */
  readonly running: {
    readonly changes: readonly ChangeSummary[];
    readonly speed_rpm: MaybeNumber;
    readonly brake_power_W: MaybeNumber;
    /** Null where only the start is another. */
    readonly unaided_share: MaybeNumber;
    /** Null without a compressor. */
    readonly duty: MaybeNumber;
    readonly keeps_up: boolean | null;
  } | null;
  /** Null unless no change alone makes it run; so are those below. */
  readonly slow_torque_now_N_m: MaybeNumber;
  readonly in_vain: readonly (ChangeSummary & {
    readonly slow_torque_N_m: MaybeNumber;
    readonly slow_load_N_m: MaybeNumber;
  })[];
}

export interface StandStillSummary {
  readonly chest_pressure_Pa_abs: MaybeNumber;
  readonly cylinder_pressure_Pa_abs: MaybeNumber;
  readonly air_anr_L_per_min: MaybeNumber;
  readonly leaks: readonly { readonly name: string; readonly mass_flow_kg_per_s: MaybeNumber }[];
}

export interface EngineSummary {
  readonly valve_gear: string;
  readonly running_direction: 'forward' | 'reverse';
  readonly gas: string;
  readonly supply_pressure_Pa_abs: MaybeNumber;
  readonly atmospheric_pressure_Pa_abs: MaybeNumber;
  readonly swept_volume_m3: MaybeNumber;
  readonly clearance_volume_m3: MaybeNumber;
  readonly events: {
    readonly admission_deg: MaybeNumber;
    readonly cut_off_deg: MaybeNumber;
    readonly release_deg: MaybeNumber;
    readonly compression_deg: MaybeNumber;
    readonly cut_off_percent_of_stroke: MaybeNumber;
  };
  readonly derived_sizes: readonly {
    readonly label: string;
    readonly value_SI: MaybeNumber;
    readonly dimension: Dimension;
  }[];
}

export interface SettledSummary {
  readonly speed_rpm: MaybeNumber;
  readonly period_s: MaybeNumber;
  readonly speed_fluctuation: MaybeNumber;
  readonly indicated_work_J: MaybeNumber;
  readonly brake_work_J: MaybeNumber;
  readonly imep_Pa: MaybeNumber;
  readonly bmep_Pa: MaybeNumber;
  readonly brake_power_W: MaybeNumber;
  readonly air_anr_L_per_min: MaybeNumber;
  readonly air_cfm: MaybeNumber;
  readonly air_per_cycle_kg: MaybeNumber;
  readonly worked_share: MaybeNumber;
  readonly leak_share: MaybeNumber;
  readonly blow_through_share: MaybeNumber;
  readonly clearance_share: MaybeNumber;
  readonly leaks: readonly { readonly name: string; readonly share: MaybeNumber }[];
  readonly work_ledger: {
    readonly bearings_J: MaybeNumber;
    readonly piston_J: MaybeNumber;
    readonly valve_gear_J: MaybeNumber;
    readonly load_J: MaybeNumber;
    readonly kinetic_gain_J: MaybeNumber;
    readonly wall_heat_J: MaybeNumber;
  };
  readonly extremes: readonly {
    readonly place: string;
    readonly min_pressure_Pa_abs: MaybeNumber;
    readonly max_pressure_Pa_abs: MaybeNumber;
    readonly min_temperature_K: MaybeNumber;
    readonly max_temperature_K: MaybeNumber;
  }[];
  readonly coldest_exhaust_K: MaybeNumber;
}

export interface CompressorSummary {
  readonly demand_anr_L_per_min: MaybeNumber;
  readonly delivery_anr_L_per_min: MaybeNumber;
  readonly duty: MaybeNumber;
  readonly duty_rating: MaybeNumber;
  readonly keeps_up: boolean;
  /** Null when the pressure never sags. */
  readonly minutes_until_sag: MaybeNumber;
}

export interface MoistureSummary {
  readonly water_taken_in_g_per_h: MaybeNumber;
  readonly water_condensed_g_per_h: MaybeNumber;
  readonly water_carried_on_g_per_h: MaybeNumber;
  readonly receiver_pressure_Pa_abs: MaybeNumber;
  readonly room_dew_point_K: MaybeNumber;
  readonly pressure_dew_point_K: MaybeNumber;
  readonly exhaust_dew_point_K: MaybeNumber;
}
