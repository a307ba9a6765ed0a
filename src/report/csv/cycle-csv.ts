/** The settled turn, a row for every crank degree. */
import type { CycleProfile, EndProfile, RunResult } from '../../run/result.ts';
import { csvText, distinct, slug, type Column } from './table.ts';
import {
  inBar,
  inCelsius,
  inCubicCentimetres,
  inDegrees,
  inGramsPerSecond,
  inRpm,
  inSquareMillimetres,
  same,
} from './units.ts';

/** The settled turn as CSV by RFC 4180, a row for every crank degree; undefined for an engine that has not settled. */
export function cycleCsv({ settled }: RunResult): string | undefined {
  if (settled === undefined) return undefined;
  const names = settled.passages.map(({ name }) => name);
  return csvText([...stateColumns(settled.profile), ...flowColumns(settled.profile, names)]);
}

function stateColumns(profile: CycleProfile): Column[] {
  return [
    { header: 'crank_angle_deg', values: profile.crankAngle, convert: inDegrees },
    { header: 'time_s', values: profile.time, convert: same },
    { header: 'speed_rpm', values: profile.speed, convert: inRpm },
    ...profile.ends.flatMap(endColumns),
    { header: 'chest_pressure_bar_abs', values: profile.chestPressure, convert: inBar },
    { header: 'chest_temperature_C', values: profile.chestTemperature, convert: inCelsius },
    { header: 'gas_torque_N_m', values: profile.gasTorque, convert: same },
    { header: 'inertia_torque_N_m', values: profile.inertiaTorque, convert: same },
    { header: 'friction_torque_N_m', values: profile.frictionTorque, convert: same },
    { header: 'load_torque_N_m', values: profile.loadTorque, convert: same },
  ];
}

/** The columns of one working end; an engine with a single one calls it "cylinder". */
function endColumns(end: EndProfile): Column[] {
  const name = slug(end.name);
  return [
    { header: `${name}_volume_cm3`, values: end.volume, convert: inCubicCentimetres },
    { header: `${name}_pressure_bar_abs`, values: end.pressure, convert: inBar },
    { header: `${name}_temperature_C`, values: end.temperature, convert: inCelsius },
    { header: `${name}_admission_area_mm2`, values: end.admissionArea, convert: inSquareMillimetres },
    { header: `${name}_exhaust_area_mm2`, values: end.exhaustArea, convert: inSquareMillimetres },
  ];
}

function flowColumns(profile: CycleProfile, names: readonly string[]): Column[] {
  const headers = distinct(names.map((name) => `flow_${slug(name)}_g_per_s`));
  return headers.map((header, i) => ({
    header,
    values: profile.massFlow[i] ?? [],
    convert: inGramsPerSecond,
  }));
}
