/** What the engine can drive, speed by speed, and from where it starts, place by place. */
import type { Drive, TorqueCurve } from '../../run/drive-result.ts';
import { csvText } from './table.ts';
import { inDegrees, inGramsPerSecond, inRpm, same } from './units.ts';

/** A column of a curve at other speeds than its own; NaN where it has none. */
function at(speeds: readonly number[], curve: TorqueCurve, column: Float64Array): number[] {
  const places = new Map(Array.from(curve.speed, (speed, i) => [speed, column[i]]));
  return speeds.map((speed) => places.get(speed) ?? NaN);
}

export function torqueCurveCsv({ curve, curveWithoutLeaks, load }: Drive): string {
  const all = new Set([...curve.speed, ...curveWithoutLeaks.speed]);
  const speeds = [...all].toSorted((a, b) => a - b);
  return csvText([
    { header: 'speed_rpm', values: speeds, convert: inRpm },
    { header: 'torque_N_m', values: at(speeds, curve, curve.torque), convert: same },
    {
      header: 'torque_without_leaks_N_m',
      values: at(speeds, curveWithoutLeaks, curveWithoutLeaks.torque),
      convert: same,
    },
    { header: 'load_torque_N_m', values: at(speeds, curve, load), convert: same },
    { header: 'air_g_per_s', values: at(speeds, curve, curve.airMassFlow), convert: inGramsPerSecond },
  ]);
}

export function startMapCsv({ startMap: { positions } }: Drive): string {
  return csvText([
    { header: 'crank_angle_deg', values: positions.map(({ crankAngle }) => crankAngle), convert: inDegrees },
    {
      header: 'starts_unaided',
      values: positions.map(({ startsUnaided }) => Number(startsUnaided)),
      convert: same,
    },
    { header: 'slowest_push_rpm', values: positions.map(({ push }) => push ?? NaN), convert: inRpm },
    {
      header: 'time_to_90_percent_s',
      values: positions.map(({ secondsToSpeed }) => secondsToSpeed ?? NaN),
      convert: same,
    },
  ]);
}
