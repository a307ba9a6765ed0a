/** The engine of a study, ready to be asked about in any of its variants; each thread has its own. */
import {
  brokenOff,
  engineAnswer,
  impossible,
  problemSentence,
  scenarioReader,
  settingOverride,
  type Attachment,
  type EngineAnswer,
  type Override,
  type SettingText,
  type Wanted,
} from '../../index.ts';

/** Everything about it, as plain data. */
export interface LaboratoryFiles {
  readonly file: string;
  readonly text: string;
  /** Tables that the scenario names, by their paths. */
  readonly tables: Readonly<Record<string, Attachment>>;
  readonly shared: readonly Override[];
  readonly wanted: Wanted;
}

export type Laboratory = (settings: readonly SettingText[]) => EngineAnswer;

export function laboratory({ file, text, tables, shared, wanted }: LaboratoryFiles): Laboratory {
  const none: Attachment = { ok: false, reason: 'it was not there when the study began' };
  const reader = scenarioReader(text, file, (path) => tables[path] ?? none);
  if (!reader.ok) throw new Error('the scenario of a study was not checked');
  return (settings) => {
    try {
      const reading = reader.read([...shared, ...settings.map(settingOverride)]);
      return reading.ok
        ? engineAnswer(reading.spec, wanted)
        : impossible(reading.problems.map(problemSentence).join(' '));
    } catch (error) {
      return brokenOff(`A fault in this program: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
}
