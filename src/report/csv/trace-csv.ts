/** The way from rest: time, crank angle, speed and pressures. */
import type { RunResult } from '../../run/result.ts';
import { csvText } from './table.ts';
import { inBar, inDegrees, inRpm, same } from './units.ts';

/** The way from rest as CSV by RFC 4180, a row for every recorded moment; units stand in the header. */
export function traceCsv({ trace }: RunResult): string {
  return csvText([
    { header: 'time_s', values: trace.time, convert: same },
    { header: 'crank_angle_deg', values: trace.crankAngle, convert: inDegrees },
    { header: 'speed_rpm', values: trace.speed, convert: inRpm },
    { header: 'chest_pressure_bar_abs', values: trace.chestPressure, convert: inBar },
    { header: 'cylinder_pressure_bar_abs', values: trace.cylinderPressure, convert: inBar },
  ]);
}
