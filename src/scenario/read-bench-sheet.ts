/** A bench sheet from its text, with the readings and the scenario that it names. */
import type { Setting } from '../kinds/parameter.ts';
import { gasNamed } from '../gas/registry.ts';
import { sheetParameters } from '../measure/sheet-description.ts';
import type { Finding } from '../measure/finding.ts';
import type { EngineUnderTest, TestContext } from '../measure/test-context.ts';
import { noAttachments, pathBeside, type Attachments } from './attachments.ts';
import { locate } from './locate.ts';
import { inFileOrder, problemListing, quoted, type Problem } from './problem.ts';
import { readDescription } from './read-description.ts';
import { scenarioReader } from './read-scenario.ts';
import type { Source } from './source.ts';

/** A sheet without a fault. */
export interface BenchSheet {
  readonly title: string;
  readonly notes: string;
  /** Kind of the test. */
  readonly test: string;
  /** Works the readings out. */
  readonly finding: () => Finding;
}

/** A sheet, or everything that is wrong with it. */
export type BenchSheetReading =
  | { readonly ok: true; readonly sheet: BenchSheet }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads the text of a bench sheet; `attachments` hands over the readings and the scenario that it names. */
export function readBenchSheet(
  text: string,
  file: string,
  attachments: Attachments = noAttachments,
): BenchSheetReading {
  const reading = readDescription(text, file, sheetParameters, attachments);
  if (!reading.ok) return reading;
  const { values, source } = reading;
  const engine =
    values.engine === undefined ? undefined : openEngine(values.engine, source, ['engine'], attachments);
  if (engine?.ok === false) return engine;
  const { title, notes, test } = values;
  const context: TestContext = {
    gas: gasNamed(values.gas),
    atmosphericPressure: values.atmosphere.pressure,
    atmosphericTemperature: values.atmosphere.temperature,
    engine: engine?.engine,
  };
  const settings = settingsIn(test.values);
  const ofSettings = engine === undefined ? [] : engine.problemsOf(settings);
  if (ofSettings.length > 0) return { ok: false, problems: inFileOrder(ofSettings) };
  const problems = test.complaints(context).map(({ path, ...words }): Problem => {
    const whole = ['test', ...path];
    return { ...source.at(locate(source, whole).offset), path: whole, ...words };
  });
  if (problems.length > 0) return { ok: false, problems: inFileOrder(problems) };
  return { ok: true, sheet: { title, notes, test: test.kind, finding: () => test.build(context) } };
}

export type OpenedEngine =
  | {
      readonly ok: true;
      readonly engine: EngineUnderTest;
      readonly problemsOf: (settings: readonly Setting[]) => readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The engine whose scenario a file names at a path of its own. */
export function openEngine(
  name: string,
  source: Source,
  path: readonly string[],
  attachments: Attachments,
): OpenedEngine {
  const at = source.at(locate(source, path).offset);
  const attachment = attachments(name);
  const refused = (received: string): OpenedEngine => ({
    ok: false,
    problems: [{ ...at, path, expected: 'the name of a scenario file', received }],
  });
  if (!attachment.ok) return refused(`${quoted(name)} (${attachment.reason})`);
  const file = pathBeside(source.file, name);
  const folder = name.replace(/[^/\\]*$/u, '');
  const reader = scenarioReader(attachment.text, file, (own) => attachments(folder + own));
  if (!reader.ok) return reader;
  const drawn = reader.read([]);
  if (!drawn.ok) return drawn;
  return {
    ok: true,
    engine: {
      file: name,
      spec: drawn.spec,
      with: (settings) => {
        const changed = reader.read(settings);
        return changed.ok ? changed : { ok: false, problems: problemListing(changed.problems) };
      },
    },
    problemsOf: (settings) => {
      const changed = reader.read(settings);
      return changed.ok ? [] : changed.problems;
    },
  };
}

const isSetting = (value: unknown): value is Setting =>
  typeof value === 'object' && value !== null && 'path' in value && 'value' in value && 'at' in value;

/** Values of the scenario that a test gives. */
const settingsIn = (values: Readonly<Record<string, unknown>>): Setting[] =>
  Object.values(values).flatMap((value) =>
    Array.isArray(value) ? (value as unknown[]).filter((own) => isSetting(own)) : [],
  );
