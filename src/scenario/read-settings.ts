/** Values of a scenario that another file gives by their paths: "leaks.0.clearance: 12 um". */
import { isMap, isScalar, type Node, type Pair } from 'yaml';
import type { Setting, SettingsParameter } from '../kinds/parameter.ts';
import { expectation } from './expectation.ts';
import { note, noteAt, whatIsAt, type Place, type Sheet } from './sheet.ts';
import { startOf } from './source.ts';

const longestPath = 300;
const isPath = (text: string): boolean => text.length <= longestPath && /^\w+(\.\w+)*$/u.test(text);

/** Paths and values as they are written; whether the scenario has such a place is for its own reader to say. */
export function readSettings(sheet: Sheet, parameter: SettingsParameter, place: Place): readonly Setting[] {
  const { node } = place;
  const [path, value] = parameter.example;
  const hint = `Write "${path}: ${value}" below it, the path from the top of the scenario inwards.`;
  if (!isMap<Node, Node | null>(node) || node.items.length > parameter.most) {
    const received = isMap(node) ? `${node.items.length}` : whatIsAt(place);
    note(sheet, place, { expected: expectation(parameter), received, hint });
    return [];
  }
  const seen = new Set<string>();
  return node.items.flatMap((pair) => readSetting(sheet, pair, place, seen, hint));
}

function readSetting(
  sheet: Sheet,
  { key, value }: Pair<Node, Node | null>,
  within: Place,
  seen: Set<string>,
  hint: string,
): Setting[] {
  const text = isScalar(key) ? String(key.value) : '';
  if (!isPath(text)) {
    const words = {
      expected: 'a path such as leaks.0.clearance',
      received: text === '' ? 'none' : `"${text}"`,
      hint,
    };
    noteAt(sheet, startOf(key), within.path, words);
    return [];
  }
  if (seen.has(text)) {
    noteAt(sheet, startOf(key), within.path, { expected: 'each path once', received: `"${text}" again` });
    return [];
  }
  seen.add(text);
  const own = value ? sheet.source.resolve(value) : undefined;
  if (!isScalar(own) || String(own.value).trim() === '') {
    const expected = 'one value, as in the scenario';
    noteAt(sheet, startOf(key), [...within.path, text], {
      expected,
      received: own ? 'a group or list' : 'nothing',
      hint,
    });
    return [];
  }
  const at = sheet.source.at(startOf(own));
  return [{ path: text.split('.'), value: String(own.value).trim(), at }];
}
