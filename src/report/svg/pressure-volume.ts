/** The paper on which pressure is drawn against volume, and loops on it. */
import { columnUnit } from '../../quantity/format.ts';
import type { EndProfile } from '../../run/result.ts';
import { pathThrough } from './scale.ts';
import { squaredPaper, type Paper } from './paper.ts';

export interface PressureVolumePaper extends Paper {
  /** Of a volume [m³] and a pressure above the room [Pa]. */
  readonly at: (volume: number, gauge: number) => readonly [number, number];
}

/** Ends with the pressure of the room around them, and further gauge pressures that have to be on the paper. */
export function pressureVolumePaper(
  ends: readonly (readonly [EndProfile, number])[],
  further: readonly number[],
): PressureVolumePaper {
  const volumes = columnUnit('volume');
  const pressures = columnUnit('pressure difference');
  const shown = [
    ...ends.flatMap(([{ pressure }, room]) => Array.from(pressure, (value) => value - room)),
    ...further,
  ].map((gauge) => pressures.of(gauge));
  const low = shown.reduce((a, b) => Math.min(a, b));
  const high = shown.reduce((a, b) => Math.max(a, b));
  const margin = 0.06 * (high - low);
  const most = volumes.of(Math.max(...ends.map(([end]) => end.clearanceVolume + end.sweptVolume)));
  const paper = squaredPaper(
    { domain: [0, 1.04 * most], label: `Cylinder volume [${volumes.label}]` },
    { domain: [low - margin, high + margin], label: `Pressure [${pressures.label} gauge]` },
  );
  return {
    ...paper,
    at: (volume, gauge) => [paper.x(volumes.of(volume)), paper.y(pressures.of(gauge))],
  };
}

/** A turn of one end as a closed path. */
export function loopPath(
  { volume, pressure }: EndProfile,
  room: number,
  { at }: PressureVolumePaper,
): string {
  return `${pathThrough(Array.from(volume, (v, i) => at(v, (pressure[i] ?? NaN) - room)))}Z`;
}
