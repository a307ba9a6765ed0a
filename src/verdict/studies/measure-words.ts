/** What the figures of a study are called, and how they read. */
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { Measured, MeasureName } from '../../study/measures.ts';
import {
  airForWorkText,
  columnText,
  fixed,
  minutesText,
  powerText,
  shareText,
  speedText,
  torqueText,
} from '../figures.ts';

interface MeasureWords {
  readonly name: string;
  readonly text: (value: number) => string;
}

const endless =
  (text: (value: number) => string) =>
  (value: number): string =>
    value === Infinity ? 'for good' : text(value);

export const measureWords: Readonly<Record<MeasureName, MeasureWords>> = {
  speed: { name: 'speed', text: speedText },
  power: { name: 'power into the load', text: powerText },
  torque: { name: 'torque on the load', text: torqueText },
  air: { name: 'air', text: (flow) => `${columnText('volume flow', flow)} ANR` },
  airPerWork: {
    name: 'air for its work',
    text: (volume) => (Number.isFinite(volume) ? airForWorkText(volume) : 'endless'),
  },
  leakShare: { name: 'air that leaks', text: shareText },
  compressorDuty: { name: 'compressor runs', text: shareText },
  lasts: { name: 'a full receiver lasts', text: endless((seconds) => minutesText(seconds / 60)) },
  baseCircle: {
    name: 'smallest base circle of the cams',
    text: (diameter) => (Number.isFinite(diameter) ? columnText('length', diameter) : 'none will do'),
  },
  startShare: { name: 'starts unaided from', text: (share) => `${shareText(share)} of positions` },
};

/** Rows of label and value of what is known of an engine. */
export function measureRows(values: Measured): (readonly [label: string, value: string])[] {
  return Object.entries(measureWords).flatMap(([name, words]) => {
    const value = values[name as MeasureName];
    return value === undefined ? [] : [[words.name, words.text(value)] as const];
  });
}

/** "12 % more", "8.3 % less" */
export const moreOrLess = (share: number, more = 'more', less = 'less'): string =>
  `${shareText(Math.abs(share))} ${share < 0 ? less : more}`;

export const rpmDifference = (radPerSecond: number): string =>
  `${fixed((Math.abs(radPerSecond) * 30) / Math.PI, 0)} rpm`;

/** Texts like "a, b and c". */
export function listed(texts: readonly string[], last = 'and'): string {
  if (texts.length < 2) return texts.join('');
  return `${texts.slice(0, -1).join(', ')} ${last} ${texts.at(-1) ?? ''}`;
}

/** Why an engine is of no use, in a few words after its value. */
export const troubleOf = ({ outcome, reason }: EngineAnswer): string =>
  outcome === 'impossible' ? `there is no such engine (${reason.replace(/\.$/u, '')})` : reason;
