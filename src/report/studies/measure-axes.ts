/** Figures of a study along the axes of a chart. */
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { MeasureName } from '../../study/measures.ts';
import { columnUnit, type ColumnUnit } from '../../quantity/format.ts';
import { airForWorkUnit } from '../../verdict/figures.ts';
import { chartNumber } from '../charts/chart.ts';
import { measureColumns } from '../csv/study-columns.ts';

type AxisUnit = Pick<ColumnUnit, 'label' | 'of'>;

/** The unit of its column in the files, where both systems have the same. */
const asFiled = (measure: MeasureName, label: string) => (): AxisUnit => ({
  label,
  of: measureColumns[measure].convert,
});

const anr = ({ label, of }: AxisUnit): AxisUnit => ({ label: `${label} ANR`, of });

const axes: Readonly<Record<MeasureName, readonly [name: string, unit: () => AxisUnit]>> = {
  speed: ['Speed', asFiled('speed', 'rpm')],
  power: ['Power', asFiled('power', 'W')],
  torque: ['Torque', () => columnUnit('torque')],
  air: ['Air', () => anr(columnUnit('volume flow'))],
  airPerWork: ['Air for its work', () => anr(airForWorkUnit())],
  leakShare: ['Air that leaks', asFiled('leakShare', '%')],
  compressorDuty: ['Compressor runs', asFiled('compressorDuty', '%')],
  lasts: ['A full receiver lasts', asFiled('lasts', 'min')],
  startShare: ['Starts unaided from', asFiled('startShare', '% of positions')],
  baseCircle: ['Smallest base circle of the cams', () => columnUnit('length')],
};

/** "Torque" */
export const axisName = (measure: MeasureName): string => axes[measure][0];

/** "Torque [N·m]" */
export function axisLabel(measure: MeasureName): string {
  const [name, unit] = axes[measure];
  return `${name} [${unit().label}]`;
}

/** `null` where there is nothing to draw. */
export function axisValue(name: MeasureName, { values }: Pick<EngineAnswer, 'values'>): number | null {
  const value = values[name];
  return value === undefined || !Number.isFinite(value) ? null : chartNumber(axes[name][1]().of(value));
}

export const unitLabel = (unit: string | undefined): string =>
  unit === undefined || unit === '' ? '' : ` [${unit}]`;
