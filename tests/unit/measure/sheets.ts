/** Sheets for tests: shipped ones with changes, their readings made up or as shipped. */
import { readFileSync } from 'node:fs';
import type { Finding } from '../../../src/measure/finding.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readBenchSheet } from '../../../src/scenario/read-bench-sheet.ts';

const folder = new URL('../../../scenarios/bench/', import.meta.url);
export const shipped = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

/** Replacements in the text of a sheet, and files that stand in for those beside it. */
export interface Changes {
  readonly replace?: readonly (readonly [from: string, to: string])[];
  readonly files?: Readonly<Record<string, string>>;
}

export function findingOf(name: string, { replace = [], files = {} }: Changes = {}): Finding {
  const text = replace.reduce((own, [from, to]) => {
    if (!own.includes(from)) throw new Error(`${name} has no "${from}"`);
    return own.replace(from, to);
  }, shipped(name));
  const reading = readBenchSheet(text, name, (path) => ({ ok: true, text: files[path] ?? shipped(path) }));
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.sheet.finding();
}

export const csv = (header: string, rows: readonly (readonly number[])[]): string =>
  [header, ...rows.map((row) => row.join(','))].join('\n');
