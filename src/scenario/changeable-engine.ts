/** The engine of an opened scenario, to be had again with other values in place of its own. */
import type { ChangeableEngine } from '../study/remedies/remedy.ts';
import { settingOverride, type Override } from './override.ts';
import type { Problem } from './problem.ts';
import type { ScenarioReader } from './read-scenario.ts';

/** A scenario that could be opened. */
type OpenedScenario = Extract<ScenarioReader, { ok: true }>;

/** The engine, or everything that is wrong with its scenario. */
export type ChangeableReading =
  | { readonly ok: true; readonly engine: ChangeableEngine }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * The engine of a scenario that `scenarioReader` has opened, for `withTrials`; `overrides` are said beside it and stand in
 * every engine it makes.
 */
export function changeableEngine(
  scenario: OpenedScenario,
  overrides: readonly Override[] = [],
): ChangeableReading {
  const { read, given } = scenario;
  const reading = read(overrides);
  if (!reading.ok) return reading;
  const engine: ChangeableEngine = {
    spec: reading.spec,
    given: given(overrides),
    changed: (settings) => {
      const changed = read([...overrides, ...settings.map(settingOverride)]);
      return changed.ok ? changed.spec : undefined;
    },
  };
  return { ok: true, engine };
}
