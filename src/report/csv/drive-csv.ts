/** What an engine can drive, speed by speed, and how it starts, place by place. */
import type { Drive, StartMap, StartPosition } from '../../run/drive-result.ts';
import { torqueAtSpeeds } from '../pictures/torque-speed.ts';
import { csvText, type Column } from './table.ts';
import { inDegrees, inGramsPerSecond, inRpm, same } from './units.ts';

/** The torque curve as CSV by RFC 4180; a cell is empty at speeds to which the engine without leaks was not taken. */
export function torqueCsv({ curve, curveWithoutLeaks, load }: Drive): string {
  return csvText([
    { header: 'speed_rpm', values: curve.speed, convert: inRpm },
    { header: 'engine_torque_N_m', values: curve.torque, convert: same },
    { header: 'load_torque_N_m', values: load, convert: same },
    {
      header: 'engine_without_leaks_torque_N_m',
      values: torqueAtSpeeds(curveWithoutLeaks, curve.speed),
      convert: same,
    },
    { header: 'air_g_per_s', values: curve.airMassFlow, convert: inGramsPerSecond },
  ]);
}

/** Of one map, its headers with something before them. */
function startColumns({ positions }: StartMap, before: string): Column[] {
  const numbers = (value: (position: StartPosition) => number | undefined): number[] =>
    positions.map((position) => value(position) ?? NaN);
  return [
    {
      header: `${before}starts_unaided`,
      values: numbers(({ startsUnaided }) => Number(startsUnaided)),
      convert: same,
    },
    { header: `${before}push_rpm`, values: numbers(({ push }) => push), convert: inRpm },
    {
      header: `${before}time_to_speed_s`,
      values: numbers(({ secondsToSpeed }) => secondsToSpeed),
      convert: same,
    },
  ];
}

/**
 * The start map as CSV by RFC 4180; a cell is empty where no push catches. For a gear that serves both ways the columns of
 * the other way, crank angles counted that way, stand behind.
 */
export function startsCsv({ startMap, startMapReversed }: Drive): string {
  const angles = startMap.positions.map(({ crankAngle }) => crankAngle);
  return csvText([
    { header: 'crank_angle_deg', values: angles, convert: inDegrees },
    ...startColumns(startMap, ''),
    ...(startMapReversed ? startColumns(startMapReversed, 'reversed_') : []),
  ]);
}
