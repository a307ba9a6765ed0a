/** Rungs of remedies that take some values by a factor: "6 mm", taken by 4/3, is "8 mm". */
import type { ChangedSetting } from '../../run/trials.ts';
import { readNumber } from '../../quantity/number.ts';
import type { GivenSetting } from '../next-changes.ts';
import { rampText } from '../variations/variation.ts';

/** Nobody sets out to make a thing more finely than to two digits. */
const DIGITS = 2;

/** A value taken by a factor, in its own unit; undefined when it is no number, or nothing. */
function byFactor({ path, text }: GivenSetting, factor: number): ChangedSetting | undefined {
  const number = readNumber(text, '');
  if (!number.ok || number.value === 0) return undefined;
  const value = Number((number.value * factor).toPrecision(DIGITS));
  return value === number.value ? undefined : { path, now: text, then: rampText(value, number.rest) };
}

/** A rung for each factor, on which all the values that are numbers are taken by it. */
export function rungsBy(
  settings: readonly GivenSetting[],
  factors: readonly number[],
): (readonly ChangedSetting[])[] {
  return factors
    .map((factor) => settings.flatMap((setting) => byFactor(setting, factor) ?? []))
    .filter((rung) => rung.length > 0);
}
