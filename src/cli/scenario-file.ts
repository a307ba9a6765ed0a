/** Reads a scenario and the tables it names from disk, and says plainly when it cannot. */
import { closeSync, constants, fstatSync, openSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join, posix, relative, win32 } from 'node:path';
import {
  changeableEngine,
  optionOverrides,
  problemListing,
  scenarioReader,
  type Attachment,
  type Attachments,
  type ChangeableEngine,
  type EngineSpec,
  type Override,
  type ScenarioReader,
  type ScenarioReading,
} from '../index.ts';
import { InputError } from './exit-codes.ts';
import { whyUnread } from './reasons.ts';

/** Larger than any scenario or table a person writes; the reader refuses far less. [bytes] */
const MOST_BYTES = 4_000_000;

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/** The text of a plain file. Devices may be endless, and a pipe would keep us waiting for whoever writes into it. */
function textIn(path: string): string {
  // Not on every system.
  const atOnce = (constants as Partial<typeof constants>).O_NONBLOCK ?? 0;
  const file = openSync(path, constants.O_RDONLY | atOnce);
  try {
    const about = fstatSync(file);
    if (!about.isFile() && !about.isDirectory()) throw new Error('it is not a file');
    if (about.size > MOST_BYTES) throw new Error(`it holds ${megabytes(about.size)}; a few kB are usual`);
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
  } finally {
    closeSync(file);
  }
}

function attachment(read: () => string): Attachment {
  try {
    return { ok: true, text: read() };
  } catch (error) {
    return { ok: false, reason: whyUnread(error) };
  }
}

/** The text of a scenario, or of another file of its kind. */
export function textOf(path: string, what = 'scenario'): string {
  const file = attachment(() => textIn(path));
  if (!file.ok) throw new InputError(`${path}: cannot read this ${what}, ${file.reason}.`);
  return file.text;
}

/** A scenario may come from a stranger: it names files of its own folder and below, by either system's rules. */
function leadsElsewhere(path: string): boolean {
  return posix.isAbsolute(path) || win32.isAbsolute(path) || /:|(^|[/\\])\.\.([/\\]|$)/u.test(path);
}

const OUTSIDE = "only files in the scenario's folder or below it are read";

/** Files beside a scenario; a link that leads elsewhere is no file beside it. */
export function attachmentsOf(scenarioPath: string): Attachments {
  const folder = dirname(scenarioPath);
  return (path) => {
    if (leadsElsewhere(path)) return { ok: false, reason: OUTSIDE };
    return attachment(() => {
      const target = realpathSync(join(folder, path));
      if (leadsElsewhere(relative(realpathSync(folder), target))) throw new Error(OUTSIDE);
      return textIn(target);
    });
  };
}

/** The scenario that a study names, unless it cannot be read. */
export function readableScenario(path: string): Attachment {
  if (!/\.ya?ml$/iu.test(path)) return { ok: false, reason: 'not named ".yaml"' };
  return attachment(() => textIn(path));
}

/** `set` are values said beside the file: "cylinder.bore=60 mm". */
export function engineFromFile(path: string, set: readonly string[] = []): EngineSpec {
  return scenarioFromFile(path, set).spec;
}

/** The engine, and the text that describes it. */
export function scenarioFromFile(path: string, set: readonly string[] = []): GoodReading {
  const { reader, overrides } = openedFile(path, set);
  const reading = reader.read(overrides);
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  return reading;
}

/** The engine, to be had with other values as well. */
export function changeableFromFile(path: string, set: readonly string[]): ChangeableEngine {
  const { reader, overrides } = openedFile(path, set);
  const reading = changeableEngine(reader, overrides);
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  return reading.engine;
}

/** What is wrong with the options is said before the file is opened. */
function openedFile(
  path: string,
  set: readonly string[],
): { readonly reader: OpenedScenario; readonly overrides: readonly Override[] } {
  const said = optionOverrides(set);
  if (!said.ok) throw new InputError(problemListing(said.problems));
  const reader = scenarioReader(textOf(path), path, attachmentsOf(path));
  if (!reader.ok) throw new InputError(problemListing(reader.problems));
  return { reader, overrides: said.overrides };
}

type OpenedScenario = Extract<ScenarioReader, { ok: true }>;

type GoodReading = Extract<ScenarioReading, { ok: true }>;
