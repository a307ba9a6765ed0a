/** Contract of the remedies: what a builder can change about an engine that does not run, the smallest change first. */
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { RunResult } from '../../run/result.ts';
import type { ChangedSetting, TriedChange } from '../../run/trials.ts';
import type { SettingText } from '../aims/aim.ts';
import type { GivenSetting } from '../next-changes.ts';

/** An engine whose scenario can be read again with other values. */
export interface ChangeableEngine {
  readonly spec: EngineSpec;
  /** Every value that the scenario gives. */
  readonly given: readonly GivenSetting[];
  /** The engine with these values in place of its own; `undefined` when it cannot be. */
  readonly changed: (settings: readonly SettingText[]) => EngineSpec | undefined;
}

export interface Remedy extends Pick<TriedChange, 'what' | 'proviso'> {
  /** Ever larger changes; each sets all that it names. */
  readonly rungs: readonly (readonly ChangedSetting[])[];
}

/** Undefined where there is nothing of the kind to change, or it cannot be what is wrong. */
export type RemedyRule = (engine: ChangeableEngine, result: RunResult) => Remedy | undefined;

/** A value as the scenario gives it; undefined where it leaves it to us. */
export const writtenAt = ({ given }: ChangeableEngine, path: string): string | undefined =>
  given.find((own) => own.path === path)?.text;

const settingTexts = (settings: readonly ChangedSetting[]): readonly SettingText[] =>
  settings.map(({ path, then }) => ({ path, value: then }));

/** The engine at a rung of a remedy. */
export const changedTo = (
  { changed }: ChangeableEngine,
  settings: readonly ChangedSetting[],
): EngineSpec | undefined => changed(settingTexts(settings));

/** Share of the regulator's gauge pressure that an engine at rest may miss in its chest before leaks or hose are at fault. */
const STARVED = 0.15;

/** Whether the chest is kept well below the regulator; of an engine that has not come to rest nobody knows. */
export function starvesChest({ engine, standStill }: RunResult): boolean {
  if (standStill === undefined) return true;
  const { supplyPressure, atmosphericPressure } = engine;
  return supplyPressure - standStill.chestPressure >= STARVED * (supplyPressure - atmosphericPressure);
}
