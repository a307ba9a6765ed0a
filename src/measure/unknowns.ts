/**
 * Values of a scenario that are to be found out. Each is written with a first guess, "leaks.0.clearance: 12 um", and is
 * varied as a multiple of it, by its logarithm: what rubs and leaks is positive, and known to a share rather than to a sum.
 */
import type { Setting } from '../kinds/parameter.ts';
import { exp } from '../numerics/elementary/exponential.ts';
import { readNumber } from '../quantity/number.ts';

export interface Unknown {
  /** As it is written: "leaks.0.clearance". */
  readonly path: string;
  readonly setting: Setting;
  /** First guess, in the unit it is written with. */
  readonly guess: number;
  readonly unit: string;
}

/** `undefined` for a value that is no positive number with its unit, such as a fit. */
export function unknownOf(setting: Setting): Unknown | undefined {
  const number = readNumber(setting.value, '1');
  if (!number.ok || number.value <= 0 || /^[A-Z]+\d/u.test(number.rest)) return undefined;
  return { path: setting.path.join('.'), setting, guess: number.value, unit: number.rest };
}

const DIGITS = 12;

/** The settings that make each unknown exp(p) times its first guess. */
export const settingsAt = (unknowns: readonly Unknown[], logarithms: readonly number[]): Setting[] =>
  unknowns.map(({ setting, guess, unit }, i) => ({
    ...setting,
    value: `${Number((guess * exp(logarithms[i]!)).toPrecision(DIGITS))} ${unit}`.trim(),
  }));

/** The bench test that measures it by itself, if there is one. */
export function directTest({ path }: Pick<Unknown, 'path'>): string | undefined {
  if (/clearance|gap|^leaks\./u.test(path)) return 'pressure decay';
  if (path.includes('breakaway')) return 'break-away';
  if (/^friction\.|drive_torque/u.test(path)) return 'coast-down';
  if (path.includes('free_air_delivery')) return 'pump-up';
  return undefined;
}
