/** What an engine can drive and how it starts, for `summary.json`. */
import type { Drive, StartMap } from '../../run/drive-result.ts';
import { inRpm } from '../csv/units.ts';
import { numberOrNull } from './number-or-null.ts';
import type { DriveSummary, StartsSummary } from './summary.ts';

export function driveSummary(drive: Drive): DriveSummary {
  const { startMapReversed } = drive;
  return {
    stall_torque_N_m: numberOrNull(drive.stallTorque),
    operating_points: drive.operatingPoints.map(({ speed, stable }) => ({
      speed_rpm: numberOrNull(inRpm(speed)),
      stable,
    })),
    starts: startsSummary(drive.startMap),
    starts_reversed: startMapReversed ? startsSummary(startMapReversed) : null,
  };
}

function startsSummary({ positions, unaidedShare }: StartMap): StartsSummary {
  const pushes = positions.flatMap(({ startsUnaided, push }) =>
    startsUnaided || push === undefined ? [] : [push],
  );
  return {
    positions: positions.length,
    unaided_share: numberOrNull(unaidedShare),
    pushed: pushes.length,
    hardest_push_rpm: pushes.length === 0 ? null : numberOrNull(inRpm(Math.max(...pushes))),
  };
}
