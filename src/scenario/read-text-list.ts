/** Texts one below the other. */
import { isScalar, isSeq, type Node } from 'yaml';
import type { TextListParameter } from '../kinds/parameter.ts';
import { expectation } from './expectation.ts';
import { note, placeOf, whatIsAt, type Place, type Sheet } from './sheet.ts';
import { startOf } from './source.ts';

export const longestEntry = 400;

export function readTextList(
  sheet: Sheet,
  parameter: TextListParameter,
  place: Place,
): readonly string[] | undefined {
  if (!place.given) return [];
  const { node } = place;
  const { min, max } = parameter;
  const expected = expectation(parameter);
  if (!isSeq<Node>(node) || node.items.length < min || node.items.length > max) {
    const received = isSeq(node) ? `${node.items.length} entries` : whatIsAt(place);
    note(sheet, place, { expected, received });
    return undefined;
  }
  return node.items.map((item, index) =>
    readEntry(sheet, parameter, placeOf(sheet, [...place.path, String(index)], startOf(item), item)),
  );
}

function readEntry(sheet: Sheet, { example }: TextListParameter, place: Place): string {
  const text = isScalar(place.node) ? String(place.node.value).trim() : '';
  if (text !== '' && text.length <= longestEntry) return text;
  const received = text === '' ? whatIsAt(place) : `${text.length} characters`;
  note(sheet, place, { expected: `a text such as "${example}"`, received });
  return text;
}
