/** The keys of one group: each valid, each once. */
import { isScalar, type Node, type Pair, type YAMLMap } from 'yaml';
import { quoted } from './problem.ts';
import { didYouMean } from './read-leaf.ts';
import { nearest } from './nearest.ts';
import { noteAt, placeOf, type Place, type Sheet } from './sheet.ts';
import { startOf } from './source.ts';

export interface Entries {
  readonly places: ReadonlyMap<string, Place>;
  /** Valid keys that a mistyped one was probably meant to be; missing them need not be said again. */
  readonly meant: ReadonlySet<string>;
}

export const noEntries: Entries = { places: new Map(), meant: new Set() };

export function readKeys(sheet: Sheet, map: YAMLMap, within: Place, valid: readonly string[]): Entries {
  const places = new Map<string, Place>();
  const meant = new Set<string>();
  for (const { key, value } of map.items as readonly Pair<Node, Node | null>[]) {
    const offset = startOf(key);
    const name = isScalar(key) ? String(key.value) : '';
    const path = [...within.path, name];
    const earlier = places.get(name);
    if (name === '') {
      noteAt(sheet, offset, within.path, { expected: 'a word as key', received: 'something else' });
    } else if (earlier !== undefined) {
      const { line } = sheet.source.at(earlier.offset);
      noteAt(sheet, offset, path, { expected: 'each key once', received: `the key of line ${line} again` });
    } else {
      places.set(name, placeOf(sheet, path, offset, value));
      if (valid.includes(name)) continue;
      noteUnknown(sheet, offset, within, name, valid);
      meant.add(nearest(name, valid) ?? '');
    }
  }
  return { places, meant };
}

function noteUnknown(
  sheet: Sheet,
  offset: number,
  within: Place,
  name: string,
  valid: readonly string[],
): void {
  noteAt(sheet, offset, within.path, {
    expected: `only the keys ${valid.join(', ')}`,
    received: `the unknown key ${quoted(name)}`,
    ...didYouMean(name, valid),
  });
}
