/** The figures of a study as columns: header with unit, and the way from SI. */
import type { Measured, MeasureName } from '../../study/measures.ts';
import { inRpm, same } from './units.ts';

interface MeasureColumn {
  readonly header: string;
  readonly convert: (value: number) => number;
}

const inPercent = (share: number): number => share * 100;
const inLitresPerMinute = (flow: number): number => flow * 60e3;
const inLitresPerKilojoule = (volume: number): number => volume * 1e6;
const inMinutes = (seconds: number): number => seconds / 60;

export const measureColumns: Readonly<Record<MeasureName, MeasureColumn>> = {
  speed: { header: 'speed_rpm', convert: inRpm },
  power: { header: 'power_W', convert: same },
  torque: { header: 'torque_N_m', convert: same },
  air: { header: 'air_anr_L_per_min', convert: inLitresPerMinute },
  airPerWork: { header: 'air_per_work_L_per_kJ', convert: inLitresPerKilojoule },
  leakShare: { header: 'leak_share_percent', convert: inPercent },
  compressorDuty: { header: 'compressor_duty_percent', convert: inPercent },
  lasts: { header: 'receiver_lasts_min', convert: inMinutes },
  startShare: { header: 'starts_from_percent', convert: inPercent },
};

const DIGITS = 6;

/** In the order of the columns; `null` where there is no number. */
export function measureCells(values: Measured): (number | null)[] {
  return Object.entries(measureColumns).map(([name, { convert }]) => {
    const value = values[name as MeasureName];
    const converted = value === undefined ? NaN : convert(value);
    return Number.isFinite(converted) ? Number(converted.toPrecision(DIGITS)) + 0 : null;
  });
}

export const measureHeaders = Object.values(measureColumns).map(({ header }) => header);
