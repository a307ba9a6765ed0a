/** The figures of a study as columns: header with unit, and the way from SI. */
import type { Measured, MeasureName } from '../../study/measures.ts';

interface MeasureColumn {
  readonly header: string;
  readonly convert: (value: number) => number;
  readonly toSi: (value: number) => number;
}

/** A column in a unit of so many SI. */
const column = (header: string, si: number): MeasureColumn => ({
  header,
  convert: (value) => value / si,
  toSi: (value) => value * si,
});

const PERCENT = 0.01;
const LITRE = 1e-3;

export const measureColumns: Readonly<Record<MeasureName, MeasureColumn>> = {
  speed: column('speed_rpm', Math.PI / 30),
  power: column('power_W', 1),
  torque: column('torque_N_m', 1),
  air: column('air_anr_L_per_min', LITRE / 60),
  airPerWork: column('air_per_work_L_per_kJ', LITRE / 1000),
  leakShare: column('leak_share_percent', PERCENT),
  compressorDuty: column('compressor_duty_percent', PERCENT),
  lasts: column('receiver_lasts_min', 60),
  startShare: column('starts_from_percent', PERCENT),
  baseCircle: column('base_circle_mm', 1e-3),
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
