/** Reads a scenario from disk, and says plainly when it cannot. */
import { open } from 'node:fs/promises';
import { problemListing, readScenario, type EngineSpec } from '../index.ts';
import { InputError } from './exit-codes.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EISDIR: 'it is a folder; name a scenario file in it',
  ELOOP: 'its links go round in a circle',
  ENOTDIR: 'part of the path is not a folder',
  ENAMETOOLONG: 'the name is too long',
};

/** Larger than any scenario a person writes; the reader refuses far less. [bytes] */
const MOST_BYTES = 4_000_000;

export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (error instanceof Error ? error.message : String(error));
}

async function textOf(path: string): Promise<string> {
  try {
    const file = await open(path);
    try {
      const { size } = await file.stat();
      if (size > MOST_BYTES)
        throw new Error(`it holds ${(size / 1e6).toFixed(1)} MB; a scenario is a few kB`);
      const bytes = await file.readFile();
      return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } finally {
      await file.close();
    }
  } catch (error) {
    const why = error instanceof TypeError ? 'it is not UTF-8 text' : reasonOf(error);
    throw new InputError(`${path}: cannot read this scenario, ${why}.`);
  }
}

export async function engineFromFile(path: string): Promise<EngineSpec> {
  const reading = readScenario(await textOf(path), path);
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  return reading.spec;
}
