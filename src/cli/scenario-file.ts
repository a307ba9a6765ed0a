/** Reads a scenario and the tables it names from disk, and says plainly when it cannot. */
import { readFileSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join, posix, win32 } from 'node:path';
import {
  optionOverrides,
  problemListing,
  readScenario,
  type Attachment,
  type Attachments,
  type EngineSpec,
  type ScenarioReading,
} from '../index.ts';
import { InputError } from './exit-codes.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EISDIR: 'it is a folder; name a scenario file in it',
  ELOOP: 'its links go round in a circle',
  ENOTDIR: 'part of the path is not a folder',
  ENAMETOOLONG: 'the name is too long',
};

/** Larger than any scenario or table a person writes; the reader refuses far less. [bytes] */
const MOST_BYTES = 4_000_000;

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (error instanceof Error ? error.message : String(error));
}

/** The text of a scenario, or of another file of its kind. */
export async function textOf(path: string, what = 'scenario'): Promise<string> {
  try {
    const file = await open(path);
    try {
      const { size } = await file.stat();
      if (size > MOST_BYTES) throw new Error(`it holds ${megabytes(size)}; a ${what} is a few kB`);
      return decoded(await file.readFile());
    } finally {
      await file.close();
    }
  } catch (error) {
    throw new InputError(`${path}: cannot read this ${what}, ${whyUnreadable(error)}.`);
  }
}

const whyUnreadable = (error: unknown): string =>
  error instanceof TypeError ? 'it is not UTF-8 text' : reasonOf(error);

/** A scenario may come from a stranger: it names files of its own folder and below, by either system's rules. */
function leadsElsewhere(path: string): boolean {
  return posix.isAbsolute(path) || win32.isAbsolute(path) || /:|(^|[/\\])\.\.([/\\]|$)/u.test(path);
}

/** Files beside a scenario. */
export function attachmentsOf(scenarioPath: string): Attachments {
  const folder = dirname(scenarioPath);
  return (path) => {
    if (leadsElsewhere(path))
      return { ok: false, reason: "only files in the scenario's folder or below it are read" };
    try {
      const target = join(folder, path);
      const about = statSync(target);
      if (!about.isFile()) return { ok: false, reason: 'it is not a file' };
      if (about.size > MOST_BYTES) return { ok: false, reason: `it holds ${megabytes(about.size)}` };
      return { ok: true, text: decoded(readFileSync(target)) };
    } catch (error) {
      return { ok: false, reason: whyUnreadable(error) };
    }
  };
}

/** The scenario that a study names, unless it cannot be read. */
export function readableScenario(path: string): Attachment {
  if (!/\.ya?ml$/iu.test(path)) return { ok: false, reason: 'not named ".yaml"' };
  try {
    const about = statSync(path);
    if (!about.isFile()) return { ok: false, reason: 'it is not a file' };
    if (about.size > MOST_BYTES) return { ok: false, reason: `it holds ${megabytes(about.size)}` };
    return { ok: true, text: decoded(readFileSync(path)) };
  } catch (error) {
    return { ok: false, reason: whyUnreadable(error) };
  }
}

/** `set` are values said beside the file: "cylinder.bore=60 mm". */
export async function engineFromFile(path: string, set: readonly string[] = []): Promise<EngineSpec> {
  return (await scenarioFromFile(path, set)).spec;
}

/** The engine, and the text that describes it. */
export async function scenarioFromFile(path: string, set: readonly string[] = []): Promise<GoodReading> {
  const said = optionOverrides(set);
  if (!said.ok) throw new InputError(problemListing(said.problems));
  const reading = readScenario(await textOf(path), path, attachmentsOf(path), said.overrides);
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  return reading;
}

type GoodReading = Extract<ScenarioReading, { ok: true }>;
