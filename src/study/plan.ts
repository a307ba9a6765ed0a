/** The engines of a study: a number of them, and the values that each one has instead of those in the scenario. */
import type { SettingText } from './aims/aim.ts';
import type { StudySpec } from './study-description.ts';
import { LEFT_OUT, type Variation } from './variations/variation.ts';

/** Every engine of a study by its number. */
export interface Plan {
  readonly variations: readonly Variation[];
  readonly count: number;
  /** One text for each variation. */
  readonly point: (engine: number) => readonly string[];
}

/** Of a study that nothing is wrong with. */
export function planOf({ vary, sample }: Pick<StudySpec, 'vary' | 'sample'>): Plan {
  const variations = vary.map((own) => own.build(null));
  const { count, point } = sample.build(variations);
  return { variations, count, point };
}

/** What a point of a plan says about the scenario. */
export function settingsAt(variations: readonly Variation[], texts: readonly string[]): SettingText[] {
  return variations.flatMap(({ paths }, i) => {
    const value = texts[i]!;
    return value === LEFT_OUT ? [] : paths.map((path) => ({ path, value }));
  });
}
