/** One file being read: what it says, where the reader stands in it, and what was found wrong so far. */
import { isScalar, isSeq, type Node } from 'yaml';
import type { Attachments } from './attachments.ts';
import { quoted, type Problem } from './problem.ts';
import type { KnownValues } from './known-values.ts';
import type { Atmosphere } from './read-leaf.ts';
import { isNothing, startOf, type Source } from './source.ts';

export interface Sheet {
  readonly source: Source;
  readonly atmosphere: Atmosphere;
  readonly attachments: Attachments;
  readonly problems: Problem[];
  readonly known: KnownValues;
}

export interface Place {
  readonly path: readonly string[];
  /** What the file says here; `undefined` if it says nothing after the key, or has no such key. */
  readonly node: Node | undefined;
  /** Whether the key is there at all. */
  readonly given: boolean;
  /** Of the key; for a key that is not there, of its group. */
  readonly offset: number;
}

type Words = Pick<Problem, 'expected' | 'received' | 'hint'>;

/** Notes a problem with the value at a place. */
export function note(sheet: Sheet, place: Place, words: Words): void {
  const offset = isScalar(place.node) ? startOf(place.node) : place.offset;
  noteAt(sheet, offset, place.path, words);
}

export function noteAt(
  { source, problems }: Sheet,
  offset: number,
  path: readonly string[],
  words: Words,
): void {
  problems.push({ ...source.at(offset), path, ...words });
}

/** The place of a value below another, with an alias replaced by what it stands for. */
export function placeOf(sheet: Sheet, path: readonly string[], offset: number, value: Node | null): Place {
  const node = value === null ? undefined : sheet.source.resolve(value);
  return { path, offset, given: true, node: node !== undefined && isNothing(node) ? undefined : node };
}

/** What stands at a place, for messages. */
export function whatIsAt({ node }: Place): string {
  if (node === undefined) return 'nothing';
  if (isScalar(node)) return quoted(String(node.value));
  return isSeq(node) ? 'a list' : 'a group of keys';
}
