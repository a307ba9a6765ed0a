/** What was tried on an engine that does not run, for `summary.json`. */
import type { ChangedSetting, InVain, TriedChange, Trials } from '../../run/trials.ts';
import { inRpm } from '../csv/units.ts';
import { numberOrNull } from './number-or-null.ts';
import type { ChangeSummary, TrialsSummary } from './summary.ts';

export function trialsSummary({ running, inVain, slowTurnNow }: Trials): TrialsSummary {
  return {
    running: running === undefined ? null : runningSummary(running),
    slow_torque_now_N_m: numberOrNull(slowTurnNow?.torque),
    in_vain: inVain.map(inVainSummary),
  };
}

function runningSummary({
  changes,
  answer,
}: NonNullable<Trials['running']>): NonNullable<TrialsSummary['running']> {
  const { speed, brakePower, unaidedShare, compressor } = answer;
  return {
    changes: changes.map(changeSummary),
    speed_rpm: numberOrNull(inRpm(speed)),
    brake_power_W: numberOrNull(brakePower),
    unaided_share: numberOrNull(unaidedShare),
    duty: numberOrNull(compressor?.duty),
    keeps_up: compressor?.keepsUp ?? null,
  };
}

const inVainSummary = ({ change, slowTurn }: InVain): TrialsSummary['in_vain'][number] => ({
  ...changeSummary(change),
  slow_torque_N_m: numberOrNull(slowTurn?.torque),
  slow_load_N_m: numberOrNull(slowTurn?.load),
});

const changeSummary = ({ what, settings }: TriedChange): ChangeSummary => ({
  what,
  settings: settings.map(({ path, now, then }: ChangedSetting) => ({ path, now, then })),
});
