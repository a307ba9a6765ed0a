/** Figures of a study along the axes of a chart. */
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { MeasureName } from '../../study/measures.ts';
import { chartNumber } from '../charts/chart.ts';
import { measureColumns } from '../csv/study-columns.ts';

export const axisLabels: Readonly<Record<MeasureName, string>> = {
  speed: 'Speed [rpm]',
  power: 'Power [W]',
  torque: 'Torque [N·m]',
  air: 'Air [L/min ANR]',
  airPerWork: 'Air for its work [L/kJ ANR]',
  leakShare: 'Air that leaks [%]',
  compressorDuty: 'Compressor runs [%]',
  lasts: 'A full receiver lasts [min]',
  startShare: 'Starts unaided from [% of positions]',
  baseCircle: 'Smallest base circle of the cams [mm]',
};

/** `null` where there is nothing to draw. */
export function axisValue(name: MeasureName, { values }: EngineAnswer): number | null {
  const value = values[name];
  return value === undefined || !Number.isFinite(value)
    ? null
    : chartNumber(measureColumns[name].convert(value));
}

export const unitLabel = (unit: string | undefined): string =>
  unit === undefined || unit === '' ? '' : ` [${unit}]`;
