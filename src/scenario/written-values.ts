/** What a scenario says, key by key as it was written, and where several scenarios say different things. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Source } from './source.ts';

/** Values as written, by their dotted path; entries of a list are counted from 0. */
export function writtenValues(source: Source): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (node: Node | null | undefined, path: readonly string[]): void => {
    const own = node ? source.resolve(node) : undefined;
    if (isMap(own))
      for (const { key, value } of own.items)
        walk(value as Node | null, [...path, isScalar(key) ? String(key.value) : '?']);
    else if (isSeq(own)) own.items.forEach((item, i) => walk(item as Node, [...path, String(i)]));
    else if (isScalar(own)) found.set(path.join('.'), String(own.value).replace(/\s+/gu, ' ').trim());
  };
  walk(source.root, []);
  return found;
}

/** A key that is not given alike. */
export interface DifferentKey {
  readonly key: string;
  /** Scenario by scenario; `undefined` where it is left out. */
  readonly values: readonly (string | undefined)[];
}

/** Keys that are texts for people; they change nothing. */
const REMARKS = ['title', 'notes'];

/** Every key that not all scenarios give alike, in the order in which they come up. */
export function differentKeys(sources: readonly Source[]): DifferentKey[] {
  const all = sources.map(writtenValues);
  const keys = [...new Set(all.flatMap((values) => [...values.keys()]))];
  return keys
    .filter((key) => !REMARKS.includes(key))
    .map((key) => ({ key, values: all.map((values) => values.get(key)) }))
    .filter(({ values }) => new Set(values).size > 1);
}
