/**
 * Metric or imperial, for people who read; files that programs read keep their own units.
 *
 * In which units a sentence is put is a matter of its reader and not of the result, and a hundred and fifty sentences
 * would all have to hand the choice on. So it is set around the making of a text: inside `inUnits` every value is shown in
 * that system, outside all is as before, and nothing made by one call can leak into another, because `work` is not async.
 */
export type UnitSystem = 'metric' | 'imperial';

let current: UnitSystem = 'metric';

/** The system in force. */
export const unitSystem = (): UnitSystem => current;

/** Makes a text with its values shown in a system of units. */
export function inUnits<T>(system: UnitSystem, work: () => T): T {
  const before = current;
  current = system;
  try {
    return work();
  } finally {
    current = before;
  }
}
